using System.Collections.Concurrent;
using InfusionSim.Cli.Client;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Selftest;

/// <summary>Asks the service for every check on every grid; a panel that two checks read is asked for once.</summary>
/// <param name="client">The service.</param>
public sealed class SelftestRun(FillClient client)
{
    private readonly ConcurrentDictionary<InfusionPlan, Lazy<Task<FillForecast>>> answers = [];

    /// <summary>Runs several checks, as many at once as the machine has cores.</summary>
    /// <param name="checks">The checks.</param>
    /// <param name="told">Told the share of them that is done.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <returns>What each came to, in the order given.</returns>
    public async Task<IReadOnlyList<SelftestResult>> RunAsync(IReadOnlyList<ClosedForm> checks, Action<double> told, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(checks);
        ArgumentNullException.ThrowIfNull(told);
        SelftestResult[] results = new SelftestResult[checks.Count];
        int done = 0;
        ParallelOptions cores = new() { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = cancellation };
        await Parallel.ForEachAsync(checks.Index(), cores, async (check, stop) =>
        {
            results[check.Index] = await RunAsync(check.Item, stop);
            told((double)Interlocked.Increment(ref done) / checks.Count);
        });
        return results;
    }

    /// <summary>Runs one check.</summary>
    /// <param name="check">The check.</param>
    /// <param name="cancellation">Stops the run.</param>
    public async Task<SelftestResult> RunAsync(ClosedForm check, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(check);
        List<double> errors = [];
        foreach (int across in SelftestResult.Across)
        {
            FillForecast forecast = await AskAsync(check.DrawOn(across), check.Name, cancellation);
            errors.Add(check.Read(forecast) is double seen ? seen / check.Expected - 1 : double.NaN);
        }

        return new SelftestResult(check, errors);
    }

    private Task<FillForecast> AskAsync(InfusionPlan plan, string name, CancellationToken cancellation) => answers.GetOrAdd(plan, asked => new(async () =>
        (await client.PredictAsync(new NamedPlan(name, asked), withFrontMap: false, withQuality: false, cancellation)).Forecast)).Value;
}
