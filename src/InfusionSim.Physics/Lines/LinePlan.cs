using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Lines;

/// <summary>Where all feeds and vents of a panel touch the cells.</summary>
/// <param name="Feeds">Contacts of each feed, in the panel's order.</param>
/// <param name="Vents">Contacts of each vent, in the panel's order.</param>
public sealed record LinePlan(IReadOnlyList<LineContact> Feeds, IReadOnlyList<LineContact> Vents)
{
    /// <summary>Lays the lines of a panel on its cells and changes conductances and volumes where lines part cells or open the way.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="cells">Its cells.</param>
    /// <param name="cloth">Its zones.</param>
    /// <param name="conductances">Conductances between the cells.</param>
    /// <param name="poreVolume">Volume that resin can fill in each cell [m³].</param>
    /// <param name="cancellation">Stops the work between lines.</param>
    public static LinePlan Lay(Panel panel, CutCellGrid cells, ClothMap cloth, LatticeOperator conductances, double[] poreVolume, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(cells);
        ArgumentNullException.ThrowIfNull(cloth);
        ArgumentNullException.ThrowIfNull(conductances);
        FittingPlacer fittings = new(cells, cloth);
        InnerLineCutter cutter = new(cells, cloth, conductances);
        List<IReadOnlyList<int>> open = [];
        ContactTable[] feeds = [.. panel.Feeds.Select(feed => Lay(feed.Path, feed.ContactWidth, true, true))];
        ContactTable[] vents = [.. panel.Vents.Select(vent => Lay(vent.Path, vent.ContactWidth, vent.Kind == VentKind.Tube, false))];
        cancellation.ThrowIfCancellationRequested();
        cutter.CutAll(poreVolume);
        for (int k = 0; k < feeds.Length; k++) PlaceShort(feeds[k], panel.Feeds[k].Path, panel.Feeds[k].ContactWidth, true);
        for (int k = 0; k < vents.Length; k++) PlaceShort(vents[k], panel.Vents[k].Path, panel.Vents[k].ContactWidth, panel.Vents[k].Kind == VentKind.Tube);
        foreach (IReadOnlyList<int> under in open) fittings.OpenUnder(under, conductances);
        return new(
            [.. feeds.Select((contacts, k) => contacts.ToContact(panel.Feeds[k].Name))],
            [.. vents.Select((contacts, k) => contacts.ToContact(panel.Vents[k].Name))]);

        ContactTable Lay(LinePath path, double contactWidth, bool passesResin, bool isFeed)
        {
            cancellation.ThrowIfCancellationRequested();
            ContactTable contacts = new();
            if (path.IsFitting)
            {
                Place(contacts, path.Points[0], contactWidth / 2, passesResin);
                return contacts;
            }

            EdgeFollowing following = EdgeFollowing.ForContactWidth(contactWidth);
            OutlineContacts.Add(contacts, path.Points, following, cells, cloth);
            List<Segment> inside = [.. InnerStretches.Of(path.Points, following, cells.Region)];
            if (passesResin) cutter.Enter(inside, contacts, isFeed);
            else InnerMembrane.Touch(inside, contacts, cells, cloth, conductances);
            return contacts;
        }

        // A line too short to part two cells, or squeezed between others, acts like a fitting: the logarithmic capacity of a straight line is a quarter of its length (textbook).
        void PlaceShort(ContactTable contacts, LinePath path, double contactWidth, bool passesResin)
        {
            if (!contacts.IsEmpty) return;
            Segment longest = Segment.Between(path.Points).DefaultIfEmpty(new(path.Points[0], path.Points[0])).MaxBy(segment => segment.Length);
            Place(contacts, longest.At(0.5), Math.Max(contactWidth / 2, longest.Length / 4), passesResin);
        }

        void Place(ContactTable contacts, Point2 place, double radius, bool passesResin)
        {
            IReadOnlyList<int> under = fittings.Add(contacts, place, radius);
            if (passesResin) open.Add(under);
        }
    }
}
