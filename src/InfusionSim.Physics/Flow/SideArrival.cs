namespace InfusionSim.Physics.Flow;

/// <summary>When the front comes to one side of the panel, in each cell.</summary>
/// <remarks>
/// A node is taken to be passed when it is half full. That is right where the front runs along its layer. Where it comes down (or up) into the
/// last layer, the face is wet only when the layer is full. The two meet in t = half + √(max(0, d² − d₀²)), where d is the time the node takes to
/// fill its second half and d₀ that of the node of its column that was first: nothing is added where the front runs along, all of d where it comes
/// through the thickness slowly (our own choice; checked against the closed form of the lag under a mesh).
/// </remarks>
internal static class SideArrival
{
    /// <summary>Arrival on one side [-]; +∞ where the front never comes, NaN without cloth. [rows × columns], x fastest.</summary>
    /// <param name="map">The fill.</param>
    /// <param name="side">Node of each cell on that side [-]; −1 without cloth. [rows × columns], x fastest.</param>
    public static double[] Of(FillMap map, int[] side)
    {
        FillProblem problem = map.Problem;
        double[] arrivals = new double[side.Length];
        for (int cell = 0; cell < side.Length; cell++)
        {
            int node = side[cell];
            arrivals[cell] = node < 0 ? double.NaN : map.Arrival[node];
            if (problem.Operator.Layers == 1 || !double.IsFinite(arrivals[cell])) continue;
            int first = FirstOf(map, node);
            double own = map.FullClock[node] - map.Arrival[node], leading = map.FullClock[first] - map.Arrival[first];
            if (double.IsFinite(own) && own > leading) arrivals[cell] += Math.Sqrt(own * own - leading * leading);
        }

        return arrivals;
    }

    private static int FirstOf(FillMap map, int node)
    {
        int first = node, step = map.Problem.Operator.CellsInLayer;
        for (int other = node % step; other < map.Problem.Operator.CellCount; other += step)
            if (map.Arrival[other] < map.Arrival[first]) first = other;
        return first;
    }
}
