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
    /// <param name="withQuality">Whether to bring the quality numbers of every square.</param>
    public static async Task<PredictFillResponse> PredictAsync(FillClient client, NamedPlan plan, Screen screen, CancellationToken cancellation, bool withQuality = false)
    {
        ArgumentNullException.ThrowIfNull(client);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(screen);
        if (!screen.ShowsProgress) return await client.PredictAsync(plan, withFrontMap: true, withQuality, cancellation);
        return await screen.WithProgressAsync($"Computing {plan.Name}", told => WatchAsync(client, plan, told, withQuality, cancellation));
    }

    /// <summary>Predicts several plans side by side, one a core, in their order.</summary>
    /// <param name="client">The service.</param>
    /// <param name="plans">The plans.</param>
    /// <param name="screen">Where the bar goes.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public static async Task<PredictFillResponse[]> PredictAllAsync(FillClient client, IReadOnlyList<NamedPlan> plans, Screen screen, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(client);
        ArgumentNullException.ThrowIfNull(plans);
        ArgumentNullException.ThrowIfNull(screen);
        if (!screen.ShowsProgress) return await Task.WhenAll(plans.Select(plan => client.PredictAsync(plan, withFrontMap: true, withQuality: false, cancellation)));
        double[] done = new double[plans.Count];
        return await screen.WithProgressAsync($"Computing {plans.Count} plans", told => Task.WhenAll(plans.Select((plan, k) => WatchAsync(
            client, plan, share =>
            {
                done[k] = share;
                told(done.Average());
            },
            withQuality: false, cancellation))));
    }

    private static Task<PredictFillResponse> WatchAsync(FillClient client, NamedPlan plan, Action<double> told, bool withQuality, CancellationToken cancellation) => client.WatchAsync(
        new WatchFillRequest { Plan = plan.Plan, Moments = 1, WithQualityMaps = withQuality }, plan.Name, step =>
        {
            if (step.Progress is Progress progress) told(progress.DoneFraction);
        },
        cancellation);
}
