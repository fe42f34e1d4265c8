using InfusionSim.Physics.Panels;

namespace InfusionSim.Verification.Tests.Settings;

/// <summary>A strip of laminate under a flow mesh, one square wide, fed through its short edge.</summary>
public static class MeshStrip
{
    /// <summary>Length [m].</summary>
    public const double Length = 1;

    /// <summary>Thickness of the mesh [m].</summary>
    public const double MeshThickness = 1e-3;

    /// <summary>Permeability of the mesh along the strip [m²].</summary>
    public const double MeshPermeability = 3e-9;

    /// <summary>Porosity of the mesh [-].</summary>
    public const double MeshPorosity = 0.85;

    /// <summary>Permeability of the laminate through its thickness [m²].</summary>
    public const double ThroughPermeability = 5e-12;

    /// <summary>A mesh.</summary>
    /// <param name="through">Its permeability through the thickness [m²].</param>
    /// <param name="area">Where it lies; null for the whole strip.</param>
    /// <param name="face">On which side of the laminate.</param>
    public static FlowMesh Mesh(double through, Numerics.Geometry.Ring? area = null, PanelFace face = PanelFace.BagSide) =>
        new("mesh", area, face, MeshThickness, MeshPorosity, new Permeability(MeshPermeability, MeshPermeability, through, 0));

    /// <summary>Laminate of the reference cloth.</summary>
    /// <param name="through">Its permeability through the thickness [m²].</param>
    public static Zone Laminate(double through) =>
        new("laminate", null, Reference.Thickness, Reference.Porosity, new Permeability(Reference.Permeability, Reference.Permeability, through, 0));

    /// <summary>The strip.</summary>
    /// <param name="cellSize">Side of a square and width of the strip [m].</param>
    /// <param name="laminate">The laminate.</param>
    /// <param name="subLayers">Its sub-layers [-]; null for the default.</param>
    /// <param name="meshes">What lies on it.</param>
    public static Panel Of(double cellSize, Zone laminate, int? subLayers, params FlowMesh[] meshes) =>
        Chain.ReferencePanel(
            Shapes.Rectangle(Length, cellSize), cellSize, new LinePath([new(0, 0), new(0, cellSize)]),
            new LinePath([new(Length, 0), new(Length, cellSize)])) with
        {
            Zones = [laminate],
            FlowMeshes = meshes,
            SubLayers = subLayers,
        };
}
