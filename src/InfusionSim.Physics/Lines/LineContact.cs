using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Lines;

/// <summary>Where a feed or vent touches the cloth.</summary>
/// <param name="Name">Name of the feed or vent.</param>
/// <param name="Contacts">The cells it touches, each named once.</param>
public sealed record LineContact(string Name, IReadOnlyList<CellContact> Contacts)
{
    /// <summary>The same contacts, each hung on the node of the line nearest to its cell.</summary>
    /// <param name="chain">Nodes of the line; null when it is held at one fixed pressure.</param>
    /// <param name="cells">The cells of each layer.</param>
    internal LineContact HungOn(NodeChain? chain, CutCellGrid cells) =>
        chain is null ? this : this with { Contacts = [.. Contacts.Select(contact => contact with { LineNode = chain.NodeNear(cells.CentroidOf(contact.Cell % cells.Grid.CellCount)) })] };
}
