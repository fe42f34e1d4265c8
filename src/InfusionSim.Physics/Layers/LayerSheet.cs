using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Lines;

namespace InfusionSim.Physics.Layers;

/// <summary>A layer laid on the cells of its panel.</summary>
internal sealed class LayerSheet
{
    /// <summary>The layer.</summary>
    public required Layer Layer { get; init; }

    /// <summary>Number of its first node [-]: its place in the stack times the cells of a layer.</summary>
    public required int FirstNode { get; init; }

    /// <summary>The cells it covers, in whole or in part; elsewhere they have no cloth.</summary>
    public required CutCellGrid Cells { get; init; }

    /// <summary>Its zones.</summary>
    public required ClothMap Cloth { get; init; }

    /// <summary>How much of each cell it covers.</summary>
    public required LayerCover Cover { get; init; }

    /// <summary>Conductances between its cells, as an operator of one layer.</summary>
    public required LatticeOperator Conductances { get; init; }

    /// <summary>Volume that resin can fill in each cell [m³]. [rows × columns], x fastest.</summary>
    public required double[] PoreVolume { get; init; }

    /// <summary>
    /// Cells with a layer above this one, so that a line laid on the panel does not touch it there; null for none. [rows × columns], x fastest.
    /// </summary>
    public required bool[]? IsUnder { get; init; }

    /// <summary>Slanted ways of turned cloth that end on its edge.</summary>
    public IReadOnlyList<WallExit> Exits => field ??= WallExits.Of(Cells, Cloth);

    /// <summary>Whether a line laid on the panel touches the layer in a cell.</summary>
    /// <param name="cell">Index of the cell.</param>
    public bool IsOnTop(int cell) => Cells.HasCloth(cell) && IsUnder?[cell] != true;

    /// <summary>Contacts of a line that count their cells in this layer.</summary>
    /// <param name="contacts">Contacts of the line.</param>
    public ContactTable Of(ContactTable contacts) => contacts.From(FirstNode);
}
