namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>Area and first moments of a polygon, taken about a place nearby so that no digits are lost.</summary>
internal static class PolygonMoments
{
    /// <summary>Signed area and first moments by the shoelace rule, in powers of the square's side.</summary>
    /// <param name="corners">Corners in order.</param>
    /// <param name="middleU">Place the moments are taken about, to the right [squares].</param>
    /// <param name="middleV">Place the moments are taken about, upwards [squares].</param>
    public static (double Area, double MomentU, double MomentV) Of(List<GridPoint> corners, double middleU, double middleV)
    {
        double area = 0, momentU = 0, momentV = 0;
        for (int k = 0; k < corners.Count; k++)
        {
            GridPoint a = corners[k], b = corners[k + 1 < corners.Count ? k + 1 : 0];
            double au = a.U - middleU, av = a.V - middleV, bu = b.U - middleU, bv = b.V - middleV;
            double cross = au * bv - bu * av;
            area += cross / 2;
            momentU += cross * (au + bu) / 6;
            momentV += cross * (av + bv) / 6;
        }

        return (area, momentU, momentV);
    }

    /// <summary>Whether a place lies inside a polygon, by counting crossings.</summary>
    /// <param name="corners">Corners in order.</param>
    /// <param name="place">The place.</param>
    public static bool Contains(List<GridPoint> corners, GridPoint place)
    {
        bool inside = false;
        for (int k = 0, j = corners.Count - 1; k < corners.Count; j = k++)
        {
            GridPoint a = corners[k], b = corners[j];
            if (a.V > place.V != b.V > place.V && place.U < a.U + (place.V - a.V) / (b.V - a.V) * (b.U - a.U)) inside = !inside;
        }

        return inside;
    }
}
