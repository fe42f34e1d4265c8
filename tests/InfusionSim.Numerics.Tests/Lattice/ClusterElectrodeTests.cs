using InfusionSim.Numerics.Lattice;

namespace InfusionSim.Numerics.Tests.Lattice;

public class ClusterElectrodeTests
{
    // Radii in cells recomputed independently from the lattice Green function; the first is exact, e^{−γ}/√8 (Peaceman, SPE J. 23 (1983), from memory).
    [Theory]
    [InlineData(0, 0, 1, 0.1985)]
    [InlineData(1, 0, 2, 0.4354)]
    [InlineData(0, 1, 2, 0.4354)]
    [InlineData(1, 1, 4, 0.7178)]
    [InlineData(0, 0, 5, 0.9549)]
    [InlineData(0, 0, 9, 1.2847)]
    [InlineData(0, 0, 13, 1.7665)]
    [InlineData(0, 0, 21, 2.1837)]
    [InlineData(0, 0, 29, 2.7585)]
    [InlineData(0, 0, 49, 3.6563)]
    public void EquivalentRadius_IsotropicCluster_MatchesTable(int offsetX, int offsetY, int count, double expected)
    {
        ClusterElectrode electrode = ClusterElectrode.Of(new PotentialKernel(1), ClusterOf(offsetX, offsetY, count));

        electrode.EquivalentRadius.ShouldBe(expected, 1e-4);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0.25)]
    [InlineData(4)]
    [InlineData(0.01)]
    public void EquivalentRadius_OneCell_IsPeacemansInTheStretchedPlane(double ratio)
    {
        // r = e^{−γ}/4 · √(√(Ty/Tx) + √(Tx/Ty)) in the stretched plane: Peaceman's anisotropic radius times the mean stretch.
        double root = Math.Sqrt(ratio);
        double expected = Math.Exp(-0.57721566490153286) / 4 * Math.Sqrt(root + 1 / root);

        ClusterElectrode.Of(new PotentialKernel(ratio), [new(0, 0)]).EquivalentRadius.ShouldBe(expected, 1e-12);
    }

    // Equivalent radius of one cell in cells, times 2√(K1·K2)^½ / (√K1 + √K2) to count it in the plane as it lies; recomputed independently from the
    // lattice Green function.
    [Theory]
    [InlineData(4, 0, 0.2093)]
    [InlineData(4, 30, 0.1729)]
    [InlineData(4, 45, 0.1654)]
    [InlineData(4, 77, 0.1891)]
    [InlineData(20, 33, 0.1404)]
    public void EquivalentRadius_OneCellOfTurnedCloth_MatchesTable(double ratio, double degrees, double expected)
    {
        PlaneTensor tensor = PlaneTensor.Of(ratio * 3e-13, 3e-13, degrees * Math.PI / 180);

        double inStretchedPlane = ClusterElectrode.Of(new PotentialKernel(tensor), [new(0, 0)]).EquivalentRadius;

        // Tolerance: one unit of the table's last digit.
        (inStretchedPlane / LatticeStretch.Of(tensor).EffectiveRadius(1)).ShouldBe(expected, 1e-4);
    }

    [Theory]
    [InlineData(4, 30)]
    [InlineData(20, 33)]
    [InlineData(100, 61)]
    public void EquivalentRadius_LargeDiscOfTurnedCloth_TendsToTheEllipseOfACircle(double ratio, double degrees)
    {
        PlaneTensor tensor = PlaneTensor.Of(ratio, 1, degrees * Math.PI / 180);
        ElectrodeLibrary library = new();
        double small = library.Solve(tensor, new(0, 0, 4 * 8 * 8)).EquivalentRadius;
        double large = library.Solve(tensor, new(0, 0, 4 * 16 * 16)).EquivalentRadius;

        ((large - small) / 8).ShouldBe(LatticeStretch.Of(tensor).EffectiveRadius(1), 0.05 * LatticeStretch.Of(tensor).EffectiveRadius(1));
    }

    [Fact]
    public void Charges_DiscOfTurnedCloth_AddUpToOneAndTakeNothingBack()
    {
        ClusterElectrode electrode = ClusterElectrode.Of(new PotentialKernel(PlaneTensor.Of(20, 1, 0.6)), ClusterOf(0, 0, 29));

        electrode.Charges.Sum().ShouldBe(1, 1e-12);
        electrode.Charges.ShouldAllBe(charge => charge >= -1e-12);
    }

    [Fact]
    public void Charges_Disc_AddUpToOneAndVanishInside()
    {
        IReadOnlyList<LatticeCell> cells = ClusterOf(0, 0, 29);
        ClusterElectrode electrode = ClusterElectrode.Of(new PotentialKernel(0.3), cells);

        electrode.Charges.Sum().ShouldBe(1, 1e-12);
        electrode.Charges[cells.ToList().IndexOf(new(0, 0))].ShouldBe(0);
        electrode.Charges.ShouldAllBe(charge => charge >= 0);
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(9)]
    public void EquivalentRadius_LargeDisc_TendsToTheEllipseOfACircle(double ratio)
    {
        // The disc's own squares round it off by a fraction of a cell: compare growth, not size.
        LatticeStretch stretch = LatticeStretch.Of(ratio);
        ElectrodeLibrary library = new();
        double small = library.Solve(PlaneTensor.Aligned(ratio), new(0, 0, 4 * 10 * 10)).EquivalentRadius;
        double large = library.Solve(PlaneTensor.Aligned(ratio), new(0, 0, 4 * 30 * 30)).EquivalentRadius;

        ((large - small) / 20).ShouldBe(stretch.EffectiveRadius(1), 0.02);
    }

    [Fact]
    public void SmallestAround_RadiusBetweenTwoClusters_TakesTheLarger()
    {
        ElectrodeLibrary library = new();

        library.SmallestAround(PlaneTensor.Aligned(1), 0.1, 0, 0).Cells.Count.ShouldBe(1);
        library.SmallestAround(PlaneTensor.Aligned(1), 1.2, 0, 0).Cells.Count.ShouldBe(9);
        library.SmallestAround(PlaneTensor.Aligned(1), 1.2, 1, 1).Cells.Count.ShouldBe(12);
        library.SmallestAround(PlaneTensor.Aligned(1), 6, 0, 0).EquivalentRadius.ShouldBeInRange(6, 6.5);
    }

    private static IReadOnlyList<LatticeCell> ClusterOf(int offsetX, int offsetY, int count) =>
        LatticeCluster.About(offsetX, offsetY).Select(cluster => cluster.Cells()).First(cells => cells.Count == count);
}
