using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks the size of the squares by arithmetic alone, before any of them exists.</summary>
internal static class ResolutionCheck
{
    private const string Path = "resolution.cellMm";

    private static readonly double[] TidySteps = [1, 1.25, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 10];

    /// <summary>Checks the size of the squares, or chooses one where the plan names none.</summary>
    public static void Run(InfusionPlan plan, Region region, PanelBox box, FaultList faults, List<string> warnings)
    {
        if (faults.HasUnder("resolution")) return;
        double cloth = Math.Abs(region.Outline.SignedArea) - region.Cutouts.Sum(cutout => Math.Abs(cutout.SignedArea));
        if (plan.Resolution is not { HasCellMm: true })
        {
            plan.Resolution = new Resolution { CellMm = UsualCellMm(cloth, box) };
            return;
        }

        // What fits a wrong outline would be wrong too.
        if (faults.HasUnder("preform.outline")) return;
        double cellMm = plan.Resolution.CellMm, cell = UnitConversion.MetresFromMm(cellMm);
        double squares = box.SquaresOf(cell), smallerMm = UnitConversion.MmFromMetres(Math.Min(box.Width, box.Height));
        double clothSquares = cloth / (cell * cell);
        if (cellMm > smallerMm * (1 + 1e-9))
        {
            faults.Add(Path, $"{Path} is {Numbers.Say(cellMm)} mm, larger than the panel's smaller side of {Numbers.Say(smallerMm)} mm. Leave it out, or take about {Numbers.Say(UsualCellMm(cloth, box))} mm.");
        }
        else if (squares > PlanLimits.MostSquares)
        {
            faults.Add(
                Path,
                $"{Path} is {Numbers.Say(cellMm)} mm: {Numbers.Count(squares)} squares round the outline; at most {Numbers.Count(PlanLimits.MostSquares)} are computed. The finest that fits is {Numbers.Say(FinestCellMm(box))} mm.",
                ErrorReason.TooLarge);
        }
        else if (clothSquares < PlanLimits.FewSquares)
        {
            warnings.Add($"{Path} is {Numbers.Say(cellMm)}: only {Numbers.Count(clothSquares)} squares of cloth, a rough hint. About {Numbers.Say(UsualCellMm(cloth, box))} mm gives a forecast.");
        }
    }

    /// <summary>Side of a square that gives about the usual number of squares, as a tidy number [mm].</summary>
    internal static double UsualCellMm(double clothArea, PanelBox box)
    {
        double wanted = UnitConversion.MmFromMetres(Math.Sqrt(clothArea / PlanLimits.UsualSquares));
        double power = Math.Pow(10, Math.Floor(Math.Log10(wanted)));
        double tidy = TidySteps.MinBy(step => Math.Abs(Math.Log(step * power / wanted))) * power;
        double finest = FinestCellMm(box), narrowest = UnitConversion.MmFromMetres(Math.Min(box.Width, box.Height));
        return UnitConversion.Kept(Math.Clamp(tidy, Math.Min(finest, narrowest), narrowest));
    }

    /// <summary>The finest square whose number in the rectangle round the outline is within the limit, rounded up to three figures [mm].</summary>
    internal static double FinestCellMm(PanelBox box)
    {
        double cell = UnitConversion.MmFromMetres(Math.Sqrt(box.Width * box.Height / PlanLimits.MostSquares));
        double step = Math.Pow(10, Math.Floor(Math.Log10(cell)) - 2);
        double tidy = step * Math.Ceiling(cell / step - 1e-9);
        while (box.SquaresOf(UnitConversion.MetresFromMm(tidy)) > PlanLimits.MostSquares) tidy += step;
        return UnitConversion.Kept(tidy);
    }
}
