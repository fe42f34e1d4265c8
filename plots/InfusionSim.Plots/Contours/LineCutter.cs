namespace InfusionSim.Plots.Contours;

/// <summary>Cuts closed rings to the part that lies on the cloth.</summary>
internal static class LineCutter
{
    /// <summary>The runs of the rings that lie inside.</summary>
    /// <param name="rings">Closed rings [mm].</param>
    /// <param name="stepMm">Longest step between two looks [mm].</param>
    /// <param name="isInside">Whether a place lies inside.</param>
    internal static List<IReadOnlyList<Spot>> Cut(List<List<Spot>> rings, double stepMm, Func<Spot, bool> isInside)
    {
        var runs = new List<IReadOnlyList<Spot>>();
        foreach (var ring in rings)
        {
            var dense = Densify(ring, stepMm);
            var inside = dense.ConvertAll(spot => isInside(spot));
            var firstOutside = inside.IndexOf(false);
            if (firstOutside < 0)
            {
                dense.Add(dense[0]);
                runs.Add(dense);
                continue;
            }

            var run = new List<Spot>();
            for (var i = 1; i <= dense.Count; i++)
            {
                var at = (firstOutside + i) % dense.Count;
                if (inside[at])
                {
                    run.Add(dense[at]);
                }
                else if (run.Count > 0)
                {
                    AddRun(runs, run);
                    run = [];
                }
            }
        }

        return runs;
    }

    private static void AddRun(List<IReadOnlyList<Spot>> runs, List<Spot> run)
    {
        if (run.Count > 1)
        {
            runs.Add(run);
        }
    }

    private static List<Spot> Densify(List<Spot> ring, double stepMm)
    {
        var dense = new List<Spot>();
        for (var i = 0; i < ring.Count; i++)
        {
            var (from, to) = (ring[i], ring[(i + 1) % ring.Count]);
            var (dx, dy) = (to.XMm - from.XMm, to.YMm - from.YMm);
            var steps = Math.Max(1, (int)Math.Ceiling(Math.Sqrt(dx * dx + dy * dy) / stepMm));
            for (var step = 0; step < steps; step++)
            {
                dense.Add(new Spot(from.XMm + dx * step / steps, from.YMm + dy * step / steps));
            }
        }

        return dense;
    }
}
