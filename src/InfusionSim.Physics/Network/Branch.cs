using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Physics.Network;

/// <summary>Joins something to a place between two nodes of a chain.</summary>
/// <remarks>
/// The place itself holds nothing, so it is eliminated: a star of three resistances becomes a triangle (star-mesh transform, textbook). Resin that
/// enters between two
/// nodes then runs to both by its own way, which a join to the nearer one alone would miss at first order of their length.
/// </remarks>
internal static class Branch
{
    // A place at the very middle of a node is moved by this share of its length, so that the ways from it stay finite.
    private const double LeastShare = 1e-3;

    private const double Untouched = 1e-9;

    /// <summary>Nodes that the branch reaches, each with its conductance [m³].</summary>
    /// <param name="links">Links of the chain; the one that the place lies on is replaced.</param>
    /// <param name="chain">The chain.</param>
    /// <param name="station">Distance of the place from the start of its path [m].</param>
    /// <param name="before">Resistance up to the place [1/m³].</param>
    public static IReadOnlyList<(int Node, double Conductance)> Join(List<NodeLink> links, NodeChain chain, double station, double before)
    {
        int near = chain.NodeAt(station);
        double toNear = chain.ResistanceTo(station, near, LeastShare);
        int far = station < chain.StationOf(near) ? near - 1 : near + 1;
        int link = far < chain.First || far >= chain.First + chain.Count ? -1 : links.FindIndex(one => (one.First, one.Second) == (Math.Min(near, far), Math.Max(near, far)));
        double toFar = link < 0 ? 0 : chain.ResistanceTo(station, far, LeastShare);

        // Where another branch has already replaced the link the nearer node must do.
        if (link < 0 || Math.Abs(links[link].Conductance * (chain.HalfResistance(near) + chain.HalfResistance(far)) - 1) > Untouched) return [(near, 1 / (before + toNear))];
        double towardsNear = 1 / toNear, towardsFar = 1 / toFar;
        double shareNear = 1 / (1 + before * (towardsNear + towardsFar));
        links[link] = links[link] with { Conductance = towardsNear * towardsFar * before * shareNear };
        return [(near, towardsNear * shareNear), (far, towardsFar * shareNear)];
    }
}
