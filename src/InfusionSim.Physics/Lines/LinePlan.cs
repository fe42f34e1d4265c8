using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Lines;

/// <summary>Where all feeds and vents of a panel touch the cells.</summary>
/// <param name="Feeds">Contacts of each feed, in the panel's order.</param>
/// <param name="Vents">Contacts of each vent, in the panel's order.</param>
/// <param name="Gaps">Contacts of each gap, in the panel's order.</param>
public sealed record LinePlan(IReadOnlyList<LineContact> Feeds, IReadOnlyList<LineContact> Vents, IReadOnlyList<LineContact> Gaps)
{
    /// <summary>Lays the lines of a panel on its layers and changes conductances and volumes where lines part cells or open the way.</summary>
    /// <remarks>
    /// A line on the outline touches every layer through the edge. Inside the panel it lies on top: it touches, in each cell, only the uppermost
    /// layer there is.
    /// A gap touches the laminate from bottom to top: on the outline it runs beside it, inside it parts it.
    /// </remarks>
    /// <param name="panel">The panel.</param>
    /// <param name="cells">Its cells.</param>
    /// <param name="sheets">Its layers, lowest first.</param>
    /// <param name="network">Nodes of its lines and gaps.</param>
    /// <param name="cancellation">Stops the work between lines.</param>
    internal static LinePlan Lay(Panel panel, CutCellGrid cells, IReadOnlyList<LayerSheet> sheets, FeedNetwork network, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(cells);
        ArgumentNullException.ThrowIfNull(sheets);
        CellFinder finder = new(cells);
        InnerLineCutter[] cutters = [.. sheets.Select(static sheet => new InnerLineCutter(sheet))];
        Dictionary<LayerSheet, FittingPlacer> fittings = [];
        List<(LayerSheet Sheet, IReadOnlyList<int> Under)> open = [];
        ContactTable[] feeds = [.. panel.Feeds.Select(feed => Lay(feed.Path, feed.ContactWidth, true, true))];
        ContactTable[] vents = [.. panel.Vents.Select(vent => Lay(vent.Path, vent.ContactWidth, vent.Kind == VentKind.Tube, false))];
        ContactTable[] gaps = [.. panel.Gaps.Select(LayGap)];
        cancellation.ThrowIfCancellationRequested();
        foreach (InnerLineCutter cutter in cutters) cutter.CutAll();
        foreach (LayerSheet sheet in sheets) LooseCells.Join(sheet.Cells, sheet.Cloth, sheet.Conductances);
        for (int k = 0; k < feeds.Length; k++) PlaceShort(feeds[k], panel.Feeds[k].Path, panel.Feeds[k].ContactWidth, true);
        for (int k = 0; k < vents.Length; k++) PlaceShort(vents[k], panel.Vents[k].Path, panel.Vents[k].ContactWidth, panel.Vents[k].Kind == VentKind.Tube);
        foreach ((LayerSheet sheet, IReadOnlyList<int> under) in open) fittings[sheet].OpenUnder(under, sheet.Conductances);
        return new(
            [.. feeds.Select((contacts, k) => contacts.ToContact(panel.Feeds[k].Name).HungOn(network.ChainOfFeed(k), cells))],
            [.. vents.Select((contacts, k) => contacts.ToContact(panel.Vents[k].Name).HungOn(network.ChainOfVent(k), cells))],
            [.. gaps.Select((contacts, k) => contacts.ToContact(panel.Gaps[k].Name).HungOn(network.Gaps[k], cells))]);

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
            List<Segment> inside = [.. InnerStretches.Of(path.Points, following, cells.Region)];
            for (int layer = 0; layer < sheets.Count; layer++)
            {
                LayerSheet sheet = sheets[layer];
                OutlineContacts.Add(sheet.Of(contacts), path.Points, following, sheet.Cells, sheet.Cloth, sheet.Exits);
                if (passesResin) cutters[layer].Enter(inside, sheet.Of(contacts), isFeed);
                else InnerMembrane.Touch(inside, sheet.Of(contacts), sheet);
            }

            return contacts;
        }

        ContactTable LayGap(Gap gap)
        {
            cancellation.ThrowIfCancellationRequested();
            ContactTable contacts = new();
            EdgeFollowing following = EdgeFollowing.ForGap(gap.Width);
            List<Segment> inside = [.. InnerStretches.Of(gap.Path.Points, following, cells.Region)];
            for (int layer = 0; layer < sheets.Count; layer++)
            {
                LayerSheet sheet = sheets[layer];
                if (sheet.Layer.Kind != LayerKind.Laminate) continue;
                OutlineContacts.Add(sheet.Of(contacts), gap.Path.Points, following, sheet.Cells, sheet.Cloth, sheet.Exits);
                cutters[layer].EnterGap(inside, sheet.Of(contacts), gap.Width);
            }

            return contacts;
        }

        // A line too short to part two cells, or squeezed between others, acts like a fitting: the logarithmic capacity of a straight line is a
        // quarter of its length (textbook).
        void PlaceShort(ContactTable contacts, LinePath path, double contactWidth, bool passesResin)
        {
            if (!contacts.IsEmpty) return;
            Segment longest = Segment.Between(path.Points).DefaultIfEmpty(new(path.Points[0], path.Points[0])).MaxBy(segment => segment.Length);
            Place(contacts, longest.At(0.5), Math.Max(contactWidth / 2, longest.Length / 4), passesResin);
        }

        void Place(ContactTable contacts, Point2 place, double radius, bool passesResin)
        {
            LayerSheet sheet = UppermostAt(place);
            if (!fittings.TryGetValue(sheet, out FittingPlacer? placer)) fittings[sheet] = placer = new(sheet.Cells, sheet.Cloth);
            IReadOnlyList<int> under = placer.Add(sheet.Of(contacts), place, radius);
            if (passesResin) open.Add((sheet, under));
        }

        LayerSheet UppermostAt(Point2 place)
        {
            int owner = finder.OwnerAt(place);
            return sheets.LastOrDefault(sheet => owner >= 0 && sheet.IsOnTop(owner) && sheet.Cloth.ZoneAt(place) >= 0)
                ?? sheets.Last(static sheet => !sheet.Layer.MayBeBare);
        }
    }
}
