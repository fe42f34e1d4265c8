using InfusionSim.Cli.Client;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Selftest;

/// <summary>Asks the service for every check on every grid; a panel that two checks read is asked for once.</summary>
/// <param name="client">The service.</param>
public sealed class SelftestRun(FillClient client)
{
    private readonly Dictionary<InfusionPlan, FillForecast> answers = [];

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

    private async Task<FillForecast> AskAsync(InfusionPlan plan, string name, CancellationToken cancellation)
    {
        if (!answers.TryGetValue(plan, out FillForecast? forecast))
            answers[plan] = forecast = (await client.PredictAsync(new NamedPlan(name, plan), withFrontMap: false, withQuality: false, cancellation)).Forecast;
        return forecast;
    }
}
