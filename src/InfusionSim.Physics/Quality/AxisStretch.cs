namespace InfusionSim.Physics.Quality;

/// <summary>A few cells in a row or column, joined to each other, and the parabola through their arrivals.</summary>
internal sealed class AxisStretch
{
    private readonly int[] nodes;
    private int first, count;
    private bool isMeeting;

    /// <summary>Makes an empty stretch.</summary>
    /// <param name="reach">Most cells on either side [-].</param>
    public AxisStretch(int reach) => nodes = new int[2 * reach + 1];

    /// <summary>Begins at a node.</summary>
    /// <param name="node">The node whose slope is asked for.</param>
    public void Begin(int node) => (nodes[0], first, count, isMeeting) = (node, 0, 1, false);

    /// <summary>Adds a node of either side; those of one side first, each side from the middle outwards.</summary>
    /// <param name="node">The node.</param>
    public void Add(int node) => nodes[count++] = node;

    /// <summary>Where the front came from both sides, keeps the side that it left longer ago per cell.</summary>
    /// <param name="arrival">Drive clock at which the front passes [-]. [nodes].</param>
    /// <param name="up">How many nodes the first side has [-], above 0 and below all.</param>
    /// <param name="noise">Difference that is none [-].</param>
    public void KeepSteeperOfTwoThatFall(double[] arrival, int up, double noise)
    {
        int down = count - 1 - up;
        double one = arrival[nodes[0]] - arrival[nodes[up]], other = arrival[nodes[0]] - arrival[nodes[count - 1]];
        isMeeting = one > noise && other > noise;
        if (!isMeeting) return;
        if (one / up >= other / down)
        {
            count = up + 1;
            return;
        }

        nodes[up] = nodes[0];
        first = up;
    }

    /// <summary>Slope at the first node along the axis [1/m]; 0 for a node without company.</summary>
    /// <param name="arrival">Drive clock at which the front passes [-]. [nodes].</param>
    /// <param name="along">Place along the axis [m]. [cells].</param>
    /// <param name="across">Place across it [m]. [cells].</param>
    /// <param name="step">Cells of a layer [-].</param>
    /// <param name="slopeAcross">Slope across it [1/m].</param>
    public double Slope(double[] arrival, double[] along, double[] across, int step, double slopeAcross)
    {
        if (count - first < 2) return 0;
        if (isMeeting && count - first > 2) return SlopeOfOneFront(arrival, along, across, step, slopeAcross);
        int node = nodes[first], cell = node % step;
        double scale = Math.Abs(along[nodes[first + 1] % step] - along[cell]), s2 = 0, s3 = 0, s4 = 0, t1 = 0, t2 = 0;
        for (int k = first + 1; k < count; k++)
        {
            int other = nodes[k] % step;
            double s = (along[other] - along[cell]) / scale, later = arrival[nodes[k]] - arrival[node] - slopeAcross * (across[other] - across[cell]);
            s2 += s * s;
            s3 += s * s * s;
            s4 += s * s * s * s;
            t1 += s * later;
            t2 += s * s * later;
        }

        // Parabola through the first node itself: its own arrival is what the slope is asked of.
        double determinant = s2 * s4 - s3 * s3;
        double slope = determinant > 1e-6 * s2 * s4 ? (t1 * s4 - t2 * s3) / determinant : t1 / s2;
        return slope / scale;
    }

    // The straight line through the others: the cell itself fills from two fronts and is passed too early.
    private double SlopeOfOneFront(double[] arrival, double[] along, double[] across, int step, double slopeAcross)
    {
        double s1 = 0, s2 = 0, t0 = 0, t1 = 0;
        int others = count - first - 1;
        for (int k = first + 1; k < count; k++)
        {
            int other = nodes[k] % step;
            double later = arrival[nodes[k]] - slopeAcross * across[other];
            s1 += along[other] / others;
            t0 += later / others;
        }

        for (int k = first + 1; k < count; k++)
        {
            int other = nodes[k] % step;
            s2 += Math.Pow(along[other] - s1, 2);
            t1 += (along[other] - s1) * (arrival[nodes[k]] - slopeAcross * across[other] - t0);
        }

        return t1 / s2;
    }
}
