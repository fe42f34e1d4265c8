using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>Takes resin that gas has pushed out from the places that were filled last.</summary>
/// <remarks>
/// Gas that pushes resin out runs ahead in fingers that no such model can follow; and what holds a pocket in place while resin runs past it are
/// forces between the fibres. Both are left out: what a pocket gains or loses in all is right, and it opens again the way it was closed, the place filled last first
/// (our own choice).
/// </remarks>
/// <param name="problem">The panel as numbers.</param>
/// <param name="arrival">When the front passed each node [-]. [nodes].</param>
internal sealed class ResinGivenBack(FillProblem problem, double[] arrival)
{
    private readonly AirWays _ways = new(problem);

    /// <summary>Settles what the nodes of a pocket lack.</summary>
    /// <param name="pocket">Its nodes.</param>
    /// <param name="saturation">How full each node is; below 0 where it lacks, which this makes good [-]. [nodes].</param>
    /// <returns>The nodes of the pocket then: those it had, and those it has opened.</returns>
    public IReadOnlyList<int> Settle(IReadOnlyList<int> pocket, double[] saturation)
    {
        List<int> opened = [.. pocket];
        double lacking = 0;
        foreach (int node in pocket)
        {
            if (saturation[node] >= 0) continue;
            lacking -= saturation[node] * problem.PoreVolume[node];
            saturation[node] = 0;
        }

        if (lacking <= 0) return opened;
        HashSet<int> own = [.. pocket], seen = [.. pocket];
        PriorityQueue<int, double> latest = new();
        foreach (int node in pocket) Offer(node);
        while (lacking > 0 && latest.TryDequeue(out int node, out _))
        {
            double held = saturation[node] * problem.PoreVolume[node], taken = Math.Min(held, lacking);
            saturation[node] = taken == held ? 0 : Math.Min(saturation[node], 1) - taken / problem.PoreVolume[node];
            lacking -= taken;
            if (!own.Contains(node)) opened.Add(node);
            if (saturation[node] == 0) OfferBeside(node);
        }

        return opened;

        void Offer(int node)
        {
            if (saturation[node] > 0) latest.Enqueue(node, double.IsFinite(arrival[node]) ? -arrival[node] : double.NegativeInfinity);
            else OfferBeside(node);
        }

        void OfferBeside(int node)
        {
            foreach (int beside in _ways.From(node))
                if (problem.PoreVolume[beside] > 0 && seen.Add(beside)) Offer(beside);
        }
    }
}
