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
        double small = library.Solve(ratio, new(0, 0, 4 * 10 * 10)).EquivalentRadius;
        double large = library.Solve(ratio, new(0, 0, 4 * 30 * 30)).EquivalentRadius;

        ((large - small) / 20).ShouldBe(stretch.EffectiveRadius(1), 0.02);
    }

    [Fact]
    public void SmallestAround_RadiusBetweenTwoClusters_TakesTheLarger()
    {
        ElectrodeLibrary library = new();

        library.SmallestAround(1, 0.1, 0, 0).Cells.Count.ShouldBe(1);
        library.SmallestAround(1, 1.2, 0, 0).Cells.Count.ShouldBe(9);
        library.SmallestAround(1, 1.2, 1, 1).Cells.Count.ShouldBe(12);
        library.SmallestAround(1, 6, 0, 0).EquivalentRadius.ShouldBeInRange(6, 6.5);
    }

    private static IReadOnlyList<LatticeCell> ClusterOf(int offsetX, int offsetY, int count) =>
        LatticeCluster.About(offsetX, offsetY).Select(cluster => cluster.Cells()).First(cells => cells.Count == count);
}
