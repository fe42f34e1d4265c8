using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Layers;

/// <summary>What the grooves and holes of a plain core come to when they are spread over its whole volume.</summary>
/// <remarks>
/// In the plane the grooves share the width: K = T/H with T the duct's permeability times its section over the pitch and H the core's thickness. Across
/// grooves that lie one way only nothing runs; a hundredth of K stands for it, the most that the flow in the plane is computed for. Through the thickness the
/// holes share the area: K = (r²/8)·πr²/P², and slits, grooves as deep as the core, add w²/12·w/P. Derived; the core counts as a layer with one pressure
/// through its thickness, so grooves open to the skin they touch by way of the holes only.
/// </remarks>
public static class PlainCore
{
    /// <summary>Share of the permeability along grooves that lie one way which stands for the one across them [-].</summary>
    public const double AcrossShare = 0.01;

    // A depth rounded on a drawing is still that of a slit.
    private const double SlitTolerance = 1e-9;

    /// <summary>The core as a layer.</summary>
    /// <param name="name">What screens and messages call it.</param>
    /// <param name="area">Where it lies; null for the whole preform.</param>
    /// <param name="toolSkinShare">Share of the laminate's thickness that lies under it [-].</param>
    /// <param name="thickness">Its thickness [m].</param>
    /// <param name="grooves">Its grooves; null for none.</param>
    /// <param name="holes">Its holes; null for none.</param>
    public static Core Of(string name, Numerics.Geometry.Ring? area, double toolSkinShare, double thickness, Grooves? grooves, Holes? holes)
    {
        double along = 0, across = 0, through = 0, pores = 0;
        if (grooves is not null)
        {
            along = Passages.Grooves(grooves.Width, grooves.Depth, grooves.Pitch) / thickness;
            across = grooves.BothWays ? along : AcrossShare * along;
            double share = grooves.Width / grooves.Pitch, ways = grooves.BothWays ? 2 : 1;
            // Where two sets cross they share their volume.
            pores = grooves.Depth / thickness * (ways * share - (ways - 1) * share * share);
            if (IsSlit(grooves, thickness)) through = ways * share * Passages.Slot(grooves.Width);
        }

        if (holes is not null)
        {
            double radius = holes.Diameter / 2, share = Math.PI * radius * radius / (holes.Pitch * holes.Pitch);
            through += share * Passages.Round(radius);
            pores += share * (1 - pores);
        }

        return new(name, area, toolSkinShare, thickness, pores, new(along, across, through, grooves?.Angle ?? 0));
    }

    /// <summary>Whether grooves are slits: as deep as the core is thick, so that they join its two skins.</summary>
    /// <param name="grooves">The grooves.</param>
    /// <param name="thickness">Thickness of the core [m].</param>
    public static bool IsSlit(Grooves grooves, double thickness)
    {
        ArgumentNullException.ThrowIfNull(grooves);
        return grooves.Depth >= thickness * (1 - SlitTolerance);
    }
}
