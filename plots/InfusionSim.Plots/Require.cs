using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots;

/// <summary>Refuses questions and answers that lack what a picture needs.</summary>
internal static class Require
{
    /// <summary>The plan with its defaults and names, as the answer was computed for; the plan given is not changed.</summary>
    internal static InfusionPlan Plan(InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var complete = plan.Clone();
        PlanDefaults.FillIn(complete);
        complete.Title = complete.Title.Length > 0 ? complete.Title : "Panel";
        return complete;
    }

    /// <summary>Refuses an answer without a forecast.</summary>
    internal static void Forecast(PredictFillResponse response)
    {
        if (response.Forecast is null)
        {
            throw new ArgumentException("The answer has no forecast to draw.", nameof(response));
        }
    }

    /// <summary>Refuses an answer without a front map.</summary>
    internal static void FrontMap(PredictFillResponse response)
    {
        if (response.Forecast is null || response.FrontMap?.Grid is null)
        {
            throw new ArgumentException("The answer has no forecast or no front map; ask for it with with_front_map.", nameof(response));
        }
    }

    /// <summary>Refuses an answer without quality numbers.</summary>
    internal static void Quality(PredictFillResponse response)
    {
        var squares = response.FrontMap.Grid.Columns * response.FrontMap.Grid.Rows;
        if (response.FrontMap.FrontSpeedMmPerMin.Count != squares || response.FrontMap.GelMarginFraction.Count != squares)
        {
            throw new ArgumentException("The answer has no front speed and no gel margin in its squares; ask for them with with_quality_maps.", nameof(response));
        }
    }

    /// <summary>Refuses an answer about a panel whose sides fill together.</summary>
    internal static void ToolSide(PredictFillResponse response)
    {
        if (response.FrontMap.ToolSide is null)
        {
            throw new ArgumentException("The panel has one layer, so that tool side and bag side fill together; give it a flow mesh, a core, peel ply or resolution.subLayers.", nameof(response));
        }
    }

    /// <summary>Refuses an answer in which no line loses pressure.</summary>
    internal static void Lines(int count)
    {
        if (count == 0)
        {
            throw new ArgumentException("No line has a bore or a hose with resin in it, so that each has the same pressure all along; give feeds[].boreMm or feeds[].hose.");
        }
    }

    /// <summary>Refuses an empty list of moments.</summary>
    internal static void Moments(IReadOnlyList<FillMoment> moments)
    {
        if (moments.Count == 0)
        {
            throw new ArgumentException("There is no moment to draw; ask for at least one.", nameof(moments));
        }
    }

    /// <summary>Refuses a moment without pressures.</summary>
    internal static void Pressure(FillMoment moment)
    {
        if (moment.Grid is null || moment.PressureMbarAbs.Count != moment.Grid.Columns * moment.Grid.Rows)
        {
            throw new ArgumentException("The moment has no pressure in its squares; ask for it with with_pressure.", nameof(moment));
        }
    }

    /// <summary>Refuses a comparison without resins or without their curves.</summary>
    internal static void Resins(CompareResinsResponse response)
    {
        if (response.Resins.Count == 0 || response.Resins.Any(resin => resin.Forecast is null || resin.Curve.Count == 0))
        {
            throw new ArgumentException("The answer has no resin, or a resin without its curve.", nameof(response));
        }
    }
}
