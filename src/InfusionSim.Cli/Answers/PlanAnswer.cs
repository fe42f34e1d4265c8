using InfusionSim.Cli.Client;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Cli.Answers;

/// <summary>A plan with what the service answered.</summary>
/// <param name="Plan">The plan with its defaults filled in.</param>
/// <param name="Name">What to call it on screens.</param>
/// <param name="Response">The answer.</param>
public sealed record PlanAnswer(InfusionPlan Plan, string Name, PredictFillResponse Response)
{
    /// <summary>Joins a plan with its answer.</summary>
    /// <param name="plan">The plan as it was sent.</param>
    /// <param name="response">The answer.</param>
    public static PlanAnswer Of(NamedPlan plan, PredictFillResponse response)
    {
        ArgumentNullException.ThrowIfNull(plan);
        InfusionPlan filled = plan.Plan.Clone();
        PlanDefaults.FillIn(filled);
        return new PlanAnswer(filled, plan.Name, response);
    }

    /// <summary>The forecast.</summary>
    public FillForecast Forecast => Response.Forecast;

    /// <summary>Whether the forecast meets the goals of the plan.</summary>
    public bool MeetsGoals => GoalVerdict.IsMet(Plan, Forecast);

    /// <summary>Letters that the labels of the answer take, blanks behind them included [-].</summary>
    public int LabelWidth => Math.Max(9, Lines(withNext: false).Max(line => line.Label.Length) + 2);

    /// <summary>The answer in words.</summary>
    /// <param name="withNext">Whether to name the command that comes next.</param>
    public IReadOnlyList<FillLine> Lines(bool withNext = true) => FillWords.Lines(Plan, Forecast, Response.FrontMap, withNext ? Name : null);
}
