using Grpc.Core;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Hosting;

namespace InfusionSim.Service.Fills;

/// <summary>Lets as many forecasts run as there are cores, lets some wait, and refuses the rest.</summary>
public sealed class ForecastDesk : IDisposable
{
    private readonly SemaphoreSlim _cores;
    private readonly int _mostWaiting;
    private readonly CancellationToken _stopping;
    private int _waiting;

    /// <summary>Makes the desk.</summary>
    /// <param name="options">How many may run and wait.</param>
    /// <param name="lifetime">Tells when the service stops.</param>
    public ForecastDesk(ServiceOptions options, IHostApplicationLifetime lifetime)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(lifetime);
        _cores = new SemaphoreSlim(options.MostRunning);
        _mostWaiting = options.MostWaiting;
        _stopping = lifetime.ApplicationStopping;
    }

    /// <summary>Runs work on a core of its own as soon as one is free.</summary>
    /// <typeparam name="T">What it answers.</typeparam>
    /// <param name="work">The work; it must heed its token.</param>
    /// <param name="cancellation">Ends the waiting or the work.</param>
    /// <exception cref="RpcException">When too many wait already.</exception>
    public async Task<T> RunAsync<T>(Func<CancellationToken, T> work, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(work);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellation, _stopping);
        await EnterAsync(either.Token);
        try
        {
            // A thread of its own: a pool thread held for seconds would keep other callers' answers waiting.
            return await Task.Factory.StartNew(() => work(either.Token), either.Token, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        }
        finally
        {
            _cores.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _cores.Dispose();

    private async Task EnterAsync(CancellationToken cancellation)
    {
        if (await _cores.WaitAsync(0, cancellation)) return;
        if (Interlocked.Increment(ref _waiting) > _mostWaiting)
        {
            Interlocked.Decrement(ref _waiting);
            throw FaultStatus.Of(StatusCode.ResourceExhausted, $"{_mostWaiting} forecasts are waiting already. Try again shortly.", ErrorReason.Busy).ToRpcException();
        }

        try
        {
            await _cores.WaitAsync(cancellation);
        }
        finally
        {
            Interlocked.Decrement(ref _waiting);
        }
    }
}
