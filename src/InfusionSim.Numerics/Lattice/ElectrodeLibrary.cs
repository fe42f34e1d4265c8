namespace InfusionSim.Numerics.Lattice;

/// <summary>Finds the cluster of cells that stands for a circle, and remembers every electrode it has solved. Not for use by several threads at once.</summary>
public sealed class ElectrodeLibrary
{
    private readonly Dictionary<double, PotentialKernel> kernels = [];
    private readonly Dictionary<(double Ratio, LatticeCluster Cluster), ClusterElectrode> electrodes = [];

    /// <summary>The electrode of a cluster.</summary>
    /// <param name="ratio">Conductance along y over that along x [-], above 0.</param>
    /// <param name="cluster">The cluster.</param>
    public ClusterElectrode Solve(double ratio, LatticeCluster cluster)
    {
        if (electrodes.TryGetValue((ratio, cluster), out ClusterElectrode? electrode)) return electrode;
        if (!kernels.TryGetValue(ratio, out PotentialKernel? kernel)) kernels[ratio] = kernel = new(ratio);
        return electrodes[(ratio, cluster)] = ClusterElectrode.Of(kernel, cluster.Cells());
    }

    /// <summary>Electrodes about one centre, from one no larger than a circle upwards, without end.</summary>
    /// <param name="ratio">Conductance along y over that along x [-], above 0.</param>
    /// <param name="radius">Radius of the circle before any stretch, in cells [-], above 0.</param>
    /// <param name="offsetX">Centre right of the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    /// <param name="offsetY">Centre above the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    public IEnumerable<ClusterElectrode> GrowingAround(double ratio, double radius, int offsetX, int offsetY) =>
        // An equivalent radius exceeds the radius to the outermost middles by a fraction of a cell only.
        LatticeCluster.About(offsetX, offsetY).SkipWhile(cluster => cluster.Radius < radius - 1).Select(cluster => Solve(ratio, cluster));

    /// <summary>The smallest electrode about a centre whose equivalent radius is at least that of a circle.</summary>
    /// <param name="ratio">Conductance along y over that along x [-], above 0.</param>
    /// <param name="radius">Radius of the circle before any stretch, in cells [-], above 0.</param>
    /// <param name="offsetX">Centre right of the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    /// <param name="offsetY">Centre above the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    public ClusterElectrode SmallestAround(double ratio, double radius, int offsetX, int offsetY)
    {
        double needed = LatticeStretch.Of(ratio).EffectiveRadius(radius);
        return GrowingAround(ratio, radius, offsetX, offsetY).First(electrode => electrode.EquivalentRadius >= needed);
    }
}
