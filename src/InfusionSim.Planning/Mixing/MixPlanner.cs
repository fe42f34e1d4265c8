using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Planning.Mixing;

/// <summary>Says how much to mix: the one way from a forecast to a mix sheet.</summary>
public static class MixPlanner
{
    /// <summary>Plans the mixing for a panel.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="forecast">Its forecast.</param>
    /// <param name="inputs">What is known of the resin when it is mixed.</param>
    /// <param name="stateAt">The panel at a time of the forecast, from the opening of the first feed [s], up to its end.</param>
    /// <param name="cancellation">Stops the work within 250 ms.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static MixSheet Plan(Panel panel, Forecast forecast, MixInputs inputs, Func<double, FillState> stateAt, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(stateAt);
        ResinNeed need = ResinNeed.Of(forecast, inputs.Density, inputs.Wishes.VentsOpenAfter);
        IReadOnlyList<PotShare> shares = PotShare.Of(panel, forecast, need, inputs.Density);
        IReadOnlyList<PotDraw> draws = PotDraw.Of(forecast, shares, inputs.Density, stateAt, cancellation);
        CaseTimes times = new(forecast);
        double end = forecast.EndTime + inputs.Wishes.VentsOpenAfter;
        PotPlan[] pots = [.. shares.Zip(draws, (share, draw) => Supplied(BatchPlanner.Plan(share, draw, inputs, times, end), share, draw, panel))];
        return new(need, inputs.Wishes.ReserveFraction * need.Drawn, pots.Count(static pot => pot.Mixed > 0) * inputs.Wishes.PotRest, pots, inputs.Ratio);
    }

    private static PotPlan Supplied(PotPlan plan, PotShare share, PotDraw draw, Panel panel)
    {
        if (!share.IsNamed || panel.Pots.FirstOrDefault(pot => pot.Name == share.Name)?.Mass is not double holds) return plan;
        return plan with { Holds = holds, RunsDryTime = share.Drawn > holds ? draw.When(holds) : null };
    }
}
