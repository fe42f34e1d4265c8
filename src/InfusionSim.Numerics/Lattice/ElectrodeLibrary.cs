namespace InfusionSim.Numerics.Lattice;

/// <summary>Finds the cluster of cells that stands for a circle, and remembers every electrode it has solved. Not for use by several threads at once.</summary>
public sealed class ElectrodeLibrary
{
    private readonly Dictionary<PlaneTensor, PotentialKernel> kernels = [];
    private readonly Dictionary<(PlaneTensor Tensor, LatticeCluster Cluster), ClusterElectrode> electrodes = [];

    /// <summary>The electrode of a cluster.</summary>
    /// <param name="tensor">What the lattice conducts like; principal values above 0. Only its shape counts.</param>
    /// <param name="cluster">The cluster.</param>
    public ClusterElectrode Solve(PlaneTensor tensor, LatticeCluster cluster)
    {
        if (electrodes.TryGetValue((tensor, cluster), out ClusterElectrode? electrode)) return electrode;
        if (!kernels.TryGetValue(tensor, out PotentialKernel? kernel)) kernels[tensor] = kernel = new(tensor);
        return electrodes[(tensor, cluster)] = ClusterElectrode.Of(kernel, cluster.Cells());
    }

    /// <summary>Electrodes about one centre, from one no larger than a circle upwards, without end.</summary>
    /// <param name="tensor">What the lattice conducts like; principal values above 0. Only its shape counts.</param>
    /// <param name="radius">Radius of the circle before any stretch, in cells [-], above 0.</param>
    /// <param name="offsetX">Centre right of the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    /// <param name="offsetY">Centre above the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    public IEnumerable<ClusterElectrode> GrowingAround(PlaneTensor tensor, double radius, int offsetX, int offsetY) =>
        // An equivalent radius exceeds the radius to the outermost middles by a fraction of a cell only.
        LatticeCluster.About(offsetX, offsetY).SkipWhile(cluster => cluster.Radius < radius - 1).Select(cluster => Solve(tensor, cluster));

    /// <summary>The smallest electrode about a centre whose equivalent radius is at least that of a circle.</summary>
    /// <param name="tensor">What the lattice conducts like; principal values above 0. Only its shape counts.</param>
    /// <param name="radius">Radius of the circle before any stretch, in cells [-], above 0.</param>
    /// <param name="offsetX">Centre right of the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    /// <param name="offsetY">Centre above the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    public ClusterElectrode SmallestAround(PlaneTensor tensor, double radius, int offsetX, int offsetY)
    {
        double needed = LatticeStretch.Of(tensor).EffectiveRadius(radius);
        return GrowingAround(tensor, radius, offsetX, offsetY).First(electrode => electrode.EquivalentRadius >= needed);
    }
}
