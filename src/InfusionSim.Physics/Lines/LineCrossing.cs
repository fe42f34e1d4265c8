namespace InfusionSim.Physics.Lines;

/// <summary>Where a line crosses the way between two neighbouring middles.</summary>
/// <param name="Share">How far along the way from the left or lower middle [-], 0 to 1.</param>
/// <param name="Stretch">The stretch that crosses.</param>
/// <param name="Contacts">Contacts of its line.</param>
/// <param name="IsFeed">Whether the line brings resin.</param>
internal readonly record struct LineCrossing(double Share, Segment Stretch, ContactTable Contacts, bool IsFeed);
