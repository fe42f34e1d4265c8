namespace InfusionSim.Physics.Lines;

/// <summary>Where a feed or vent touches the cloth.</summary>
/// <param name="Name">Name of the feed or vent.</param>
/// <param name="Contacts">The cells it touches, each named once.</param>
public sealed record LineContact(string Name, IReadOnlyList<CellContact> Contacts);
