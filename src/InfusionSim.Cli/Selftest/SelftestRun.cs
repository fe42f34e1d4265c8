using InfusionSim.Cli.Client;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Selftest;

/// <summary>Asks the service for every check on every grid.</summary>
public static class SelftestRun
{
    /// <summary>Runs one check.</summary>
    /// <param name="client">The service.</param>
    /// <param name="check">The check.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static async Task<SelftestResult> RunAsync(FillClient client, ClosedForm check, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(client);
        ArgumentNullException.ThrowIfNull(check);
        List<double> errors = [];
        foreach (int across in SelftestResult.Across)
        {
            InfusionPlan plan = check.Draw();
            plan.Resolution = new Resolution { CellMm = check.AcrossMm / across };
            PredictFillResponse response = await client.PredictAsync(new NamedPlan(check.Name, plan), withFrontMap: false, withQuality: false, cancellation);
            errors.Add(check.ReadTimeS(response.Forecast) is double time ? time / check.ExpectedTimeS - 1 : double.NaN);
        }

        return new SelftestResult(check, errors);
    }
}
