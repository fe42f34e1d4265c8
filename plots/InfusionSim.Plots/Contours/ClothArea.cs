using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Contours;

/// <summary>Where the cloth lies: inside the outline and outside every cut-out.</summary>
internal sealed class ClothArea
{
    /// <summary>Reads the cloth of a plan.</summary>
    internal ClothArea(InfusionPlan plan)
    {
        Rings = [.. new[] { plan.Preform.Outline }.Concat(plan.Preform.Cutouts).Select(ring => ring.Points.Select(Read).ToArray())];
        if (Rings[0].Length < 3)
        {
            throw new ArgumentException("The plan has no outline to draw; give at least three points.", nameof(plan));
        }

        LeftMm = Rings[0].Min(spot => spot.XMm);
        RightMm = Rings[0].Max(spot => spot.XMm);
        LowestMm = Rings[0].Min(spot => spot.YMm);
        HighestMm = Rings[0].Max(spot => spot.YMm);
    }

    /// <summary>Outline first, then the cut-outs.</summary>
    internal Spot[][] Rings { get; }

    /// <summary>Left end of the outline [mm].</summary>
    internal double LeftMm { get; }

    /// <summary>Right end of the outline [mm].</summary>
    internal double RightMm { get; }

    /// <summary>Lowest point of the outline [mm].</summary>
    internal double LowestMm { get; }

    /// <summary>Highest point of the outline [mm].</summary>
    internal double HighestMm { get; }

    /// <summary>Width of the outline [mm].</summary>
    internal double WidthMm => RightMm - LeftMm;

    /// <summary>Height of the outline [mm].</summary>
    internal double HeightMm => HighestMm - LowestMm;

    /// <summary>A point of the plan as a place on the drawing.</summary>
    internal static Spot Read(Point point) => new(point.XMm, point.YMm);

    /// <summary>Whether a place has cloth.</summary>
    internal bool Contains(Spot spot) => Rings.Count(ring => IsInside(ring, spot)) % 2 == 1;

    /// <summary>Whether a place lies inside a ring.</summary>
    internal static bool IsInside(Spot[] ring, Spot spot)
    {
        var inside = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            if (ring[i].YMm > spot.YMm != ring[j].YMm > spot.YMm
                && spot.XMm < ring[i].XMm + (ring[j].XMm - ring[i].XMm) * (spot.YMm - ring[i].YMm) / (ring[j].YMm - ring[i].YMm))
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
