using System.Threading.Channels;
using InfusionSim.Physics.Forecasts;

namespace InfusionSim.Service.Fills;

/// <summary>Holds the latest word on how far a computation is: the computing thread never waits for the one who reads it.</summary>
internal sealed class LatestProgress : IProgress<ForecastProgress>
{
    private readonly Channel<ForecastProgress> _latest = Channel.CreateBounded<ForecastProgress>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true });

    /// <summary>What comes, as fast as it is read; what was overtaken is left out.</summary>
    public IAsyncEnumerable<ForecastProgress> ReadAllAsync(CancellationToken cancellation) => _latest.Reader.ReadAllAsync(cancellation);

    /// <inheritdoc/>
    public void Report(ForecastProgress value) => _latest.Writer.TryWrite(value);

    /// <summary>Says that nothing more will come.</summary>
    public void Close() => _latest.Writer.TryComplete();
}
