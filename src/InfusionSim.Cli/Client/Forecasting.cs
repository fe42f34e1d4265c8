using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Client;

/// <summary>Asks for a forecast, with a bar while somebody watches.</summary>
public static class Forecasting
{
    /// <summary>Predicts one plan with the arrival of every square.</summary>
    /// <param name="client">The service.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="screen">Where the bar goes.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public static async Task<PredictFillResponse> PredictAsync(FillClient client, NamedPlan plan, Screen screen, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(client);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(screen);
        if (!screen.ShowsProgress) return await client.PredictAsync(plan, withFrontMap: true, cancellation);
        WatchFillRequest request = new() { Plan = plan.Plan, Moments = 1 };
        return await screen.WithProgressAsync($"Computing {plan.Name}", told => client.WatchAsync(
            request, plan.Name, step =>
            {
                if (step.Progress is Progress progress) told(progress.DoneFraction);
            },
            cancellation));
    }
}
