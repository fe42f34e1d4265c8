using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>Flow from one zone of turned cloth into another, read far from the sealed sides of a wide panel.</summary>
public sealed class TurnedZonesTests
{
    private const double Length = 0.24;
    private const double Width = 0.96;

    [Fact]
    public void Flow_AcrossTheRidgeOfAChevron_IsThatOfKxx()
    {
        // Source: p falls evenly across the ridge, Kxx is the same on both sides and what Kxy drives runs along it (derived). Case: K1 = 4e-10, K2 =
        // 1e-10 m² at +45° and
        // −45°, 48 cells across. Expected: 2.5e-10 m².
        double observed = Permeability(Cloth(4e-10, 1e-10, 45), Cloth(4e-10, 1e-10, -45), 48, 0.5, 0, out string grid);

        // Tolerance 1 %: asked for.
        new AccuracyRecord("chevron ±45°, 4 : 1, across the ridge", "Kxx (derived)", 2.5, observed * 1e10, "1e-10 m²", grid).ShouldHold(1e-2);
    }

    [Theory]
    [InlineData(4, 30, 30, 0.5)]
    [InlineData(4, 30, -50, 0.5)]
    [InlineData(4, 33, -50, 0.43)]
    public void Flow_IntoClothAThousandTimesAsPermeable_IsThatOfZonesInSeries(double ratio, double first, double second, double boundary)
    {
        // Source: two zones in series, 1/(L₁/K₁ + L₂/K₂) with the Kxx of each (textbook). Case: contrast 10³, cloth at two angles, the boundary on a
        // face and inside cells.
        (Permeability low, Permeability high) = (Cloth(ratio * 1e-12, 1e-12, first), Cloth(ratio * 1e-9, 1e-9, second));
        double expected = 1 / (boundary / Xx(low) + (1 - boundary) / Xx(high));
        double observed = Permeability(low, high, 24, boundary, 0, out string grid);

        // Tolerance 1e-5: exact but for the sealed sides four lengths away.
        new AccuracyRecord(
            $"{ratio} : 1 cloth at {first}° and {second}°, contrast 10³", "zones in series (textbook)", expected * 1e12, observed * 1e12, "1e-12 m²",
            grid).ShouldHold(1e-5);
    }

    [Theory]
    [InlineData(4, 30, -50, 17)]
    [InlineData(20, 33, 0, 0)]
    public void Flow_IntoClothAThousandTimesAsPermeableOffTheSquares_ConvergesToZonesInSeries(double ratio, double first, double second, double degrees)
    {
        // As above with the boundary inside cells: panel and cloth turned by 17°, so that boundary and fed edges run askew through the squares, or
        // cloth whose ways span two of them.
        (Permeability low, Permeability high) = (Cloth(ratio * 1e-12, 1e-12, first), Cloth(ratio * 1e-9, 1e-9, second));
        string problem = $"{ratio} : 1 cloth at {first}° and {second}°, contrast 10³, turned {degrees}°";
        double expected = 1 / (0.43 / Xx(low) + 0.57 / Xx(high));
        int[] counts = [24, 48, 96];
        double[] errors = new double[counts.Length];
        for (int k = 0; k < counts.Length; k++)
        {
            double observed = Permeability(low, high, counts[k], 0.43, degrees * Math.PI / 180, out string grid);
            var record = new AccuracyRecord(problem, "zones in series (textbook)", expected * 1e12, observed * 1e12, "1e-12 m²", grid);
            errors[k] = record.RelativeError;

            // Tolerance 5 % on 48 cells: asked for.
            if (k == 1) record.ShouldHold(5e-2);
            else record.Print();
        }

        // Tolerance: first order, less what the place of the boundary in its cells scatters.
        Convergence.PrintOrder(problem, [.. counts.Select(count => Length / count)], errors).ShouldBeGreaterThanOrEqualTo(0.9);
    }

    private static Permeability Cloth(double k1, double k2, double degrees) => new(k1, k2, 1e-13, degrees * Math.PI / 180);

    private static double Xx(Permeability cloth) => cloth.K1 * Math.Pow(Math.Cos(cloth.Angle), 2) + cloth.K2 * Math.Pow(Math.Sin(cloth.Angle), 2);

    // Flow through the middle sixth of the fed edge: the sides of the panel are four lengths away.
    private static double Permeability(Permeability left, Permeability right, int across, double boundary, double turn, out string grid)
    {
        FillProblem problem = Chain.Problem(new Panel(
            new Region(Shapes.Rectangle(Length, Width).Turned(turn), []),
            [
                new Zone("left", null, Reference.Thickness, Reference.Porosity, left with { Angle = left.Angle + turn }),
                new Zone(
                    "right", Shapes.Box(boundary * Length, -Length, 2 * Length, 2 * Width).Turned(turn), Reference.Thickness, Reference.Porosity,
                    right with { Angle = right.Angle + turn }),
            ],
            [new Feed("F1", Line(0), 0.012)], [new Vent("V1", Line(Length), 0.012, VentKind.Tube)], [], Length / across));
        grid = Chain.GridOf(problem);
        double[] pressure = Chain.SteadyPressure(problem);
        double low = Width * 5 / 12, high = Width * 7 / 12;
        double flow = problem.Feeds[0].Contacts.Where(contact => problem.Cells.CentroidOf(contact.Cell).Turned(-turn).Y is double y && y > low && y < high)
            .Sum(contact => contact.Conductance * (1 - pressure[contact.Cell]));
        return flow * Length / ((high - low) * Reference.Thickness);

        LinePath Line(double x) => new([new Point2(x, 0).Turned(turn), new Point2(x, Width).Turned(turn)]);
    }
}
