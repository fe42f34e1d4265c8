using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks where feeds and vents lie on the cloth.</summary>
internal sealed class LinePlaces(Region region, RegionLocator locator, FaultList faults, List<string> warnings)
{
    private readonly RingLocator _outline = new(region.Outline);
    private readonly RingLocator[] _cutouts = [.. region.Cutouts.Select(cutout => new RingLocator(cutout))];

    /// <summary>Checks one feed or vent: a fault for a point off the cloth, a warning where the line leaves the cloth between its points.</summary>
    public void Check(DrawnLine line)
    {
        bool isOnCloth = true;
        double reach = line.Path.IsFitting
            ? UnitConversion.MetresFromMm(PlanLimits.TouchingMm)
            : Math.Min(UnitConversion.MetresFromMm(PlanLimits.LineReachMm), line.ContactWidth / 2);
        for (int k = 0; k < line.Path.Points.Count; k++)
        {
            Point2 point = line.Path.Points[k];
            if (!IsOff(point, reach)) continue;
            isOnCloth = false;
            double distanceMm = UnitConversion.MmFromMetres(locator.DistanceToEdge(point));
            string part = line.Path.IsFitting ? "" : $", point {k + 1},";
            faults.Add(line.Place + ".path", $"{line.What} '{line.Name}'{part} at {RingCheck.Say(point)} lies {Numbers.Say(Numbers.Rounded(distanceMm, 3))} mm {LineCheck.OutsideWhat(region, point)}; "
                + $"it must touch the cloth. The nearest place on its edge is {RingCheck.Say(locator.NearestOnEdge(point))}.");
            break;
        }

        if (isOnCloth) CheckBetweenPoints(line, reach);
    }

    private void CheckBetweenPoints(DrawnLine line, double reach)
    {
        for (int k = 1; k < line.Path.Points.Count; k++)
        {
            Point2 from = line.Path.Points[k - 1], to = line.Path.Points[k];
            Point2? off = PlacesOff(from, to).Where(place => IsOff(place, reach)).Cast<Point2?>().FirstOrDefault();
            if (off is not Point2 found) continue;
            if (line.StaysOnCloth)
                faults.Add(line.Place + ".path", $"{line.What} '{line.Name}' leaves the cloth near {RingCheck.Say(found)}, and no cloth beside it tells its height there; keep it on the cloth, or give heightMm.");
            else
                warnings.Add($"{line.What} '{line.Name}' leaves the cloth near {RingCheck.Say(found)}; there it touches nothing.");
            return;
        }
    }

    private bool IsOff(Point2 place, double reach) => !locator.Contains(place) && locator.DistanceToEdge(place) > reach;

    // The middles of all stretches that lie outside the outline or inside a cut-out.
    private IEnumerable<Point2> PlacesOff(Point2 from, Point2 to)
    {
        double end = 0;
        foreach (ParameterInterval inside in _outline.IntervalsInside(from, to).Append(new ParameterInterval(1, 1)))
        {
            if (inside.From > end) yield return At((end + inside.From) / 2);
            end = inside.To;
        }

        foreach (RingLocator cutout in _cutouts)
            foreach (ParameterInterval inside in cutout.IntervalsInside(from, to))
                yield return At((inside.From + inside.To) / 2);

        Point2 At(double share) => new(from.X + share * (to.X - from.X), from.Y + share * (to.Y - from.Y));
    }
}
