using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns a finding into the contract's; its sentence is added once the forecast is complete.</summary>
internal static class FindingMapping
{
    /// <summary>Maps a finding without its sentence.</summary>
    public static Contract.Finding ToContract(Domain.Finding finding)
    {
        var answer = new Contract.Finding { Kind = ToContract(finding.Kind), Line = finding.Line ?? "" };
        if (finding.At is Numerics.Geometry.Point2 place) answer.At = ForecastMapping.ToPoint(place);
        if (Finite.OrNone(finding.Time) is double time) answer.TimeS = UnitConversion.Kept(time);
        if (Finite.OrNone(finding.Amount) is double amount) (answer.Amount, answer.AmountUnit) = WithUnit(finding.Kind, amount);
        return answer;
    }

    private static Contract.FindingKind ToContract(Domain.FindingKind kind) => kind switch
    {
        Domain.FindingKind.GelsFirst => Contract.FindingKind.GelsFirst,
        Domain.FindingKind.PotRunsDry => Contract.FindingKind.PotRunsDry,
        Domain.FindingKind.StopsShort => Contract.FindingKind.StopsShort,
        Domain.FindingKind.TrapsAir => Contract.FindingKind.TrapsAir,
        Domain.FindingKind.VentReachedEarly => Contract.FindingKind.VentReachedEarly,
        Domain.FindingKind.ThinMargin => Contract.FindingKind.ThinMargin,
        Domain.FindingKind.ResinOutAboveGoal => Contract.FindingKind.ResinOutAboveGoal,
        Domain.FindingKind.ToolSideBehind => Contract.FindingKind.ToolSideBehind,
        Domain.FindingKind.LineEndWeak => Contract.FindingKind.LineEndWeak,
        Domain.FindingKind.MayBoil => Contract.FindingKind.MayBoil,
        Domain.FindingKind.GoalFinerThanResolution => Contract.FindingKind.GoalFinerThanResolution,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such finding."),
    };

    private static (double Amount, string Unit) WithUnit(Domain.FindingKind kind, double amount) => kind switch
    {
        Domain.FindingKind.TrapsAir or Domain.FindingKind.StopsShort or Domain.FindingKind.GoalFinerThanResolution => (UnitConversion.Mm2FromSquareMetres(amount), "mm2"),
        Domain.FindingKind.VentReachedEarly or Domain.FindingKind.ResinOutAboveGoal or Domain.FindingKind.PotRunsDry => (UnitConversion.Cm3FromCubicMetres(amount), "cm3"),
        Domain.FindingKind.MayBoil => (UnitConversion.MbarFromPascal(amount), "mbar_abs"),
        Domain.FindingKind.ToolSideBehind => (UnitConversion.Kept(amount / 60), "min"),
        _ => (UnitConversion.Kept(amount), "ratio"),
    };
}
