using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Layers;

/// <summary>A plain core with grooves, holes or both, as the layer it comes to.</summary>
/// <remarks>
/// Grooves: K along them = K_duct w d / (pitch × thickness), and a hundredth of it across those that lie one way, in place of nothing: the most that
/// turned tensors are computed for; porosity w d / (pitch × thickness). A second set adds itself across, and the crossings count once. Holes: K₃ = φ
/// d²/32 with φ = πd²/(4 pitch²), tubes side by side (Hagen and Poiseuille). Grooves lie open to both skins, as when they are cut into both faces or
/// meet holes: without holes K₃ is that of the groove mouths, (w/pitch) K_duct, far above any cloth's. Derived; entry losses are left out, so short
/// wide holes come out too open, which the cloth beside them hides.
/// </remarks>
public static class CutCore
{
    /// <summary>Permeability across grooves that lie one way over that along them [-].</summary>
    public const double AcrossShare = 0.01;

    /// <summary>The core; one without grooves and holes passes nothing and holds nothing.</summary>
    /// <param name="name">What screens and messages call it.</param>
    /// <param name="area">Where it lies; null means the whole preform.</param>
    /// <param name="toolSkinShare">Share of the laminate's thickness that lies under it [-].</param>
    /// <param name="thickness">Thickness [m].</param>
    /// <param name="grooves">Its grooves; null for none.</param>
    /// <param name="holes">Its holes; null for none.</param>
    public static Core Of(string name, Ring? area, double toolSkinShare, double thickness, CoreGrooves? grooves, CoreHoles? holes)
    {
        double along = 0, across = 0, through = 0, porosity = 0;
        if (grooves is not null)
        {
            along = Passages.Grooves(grooves.Width, grooves.Depth, grooves.Pitch) / thickness;
            across = grooves.BothWays ? along : AcrossShare * along;
            double share = grooves.Width / grooves.Pitch;
            double mouths = grooves.BothWays ? 2 * share - share * share : share;
            porosity = mouths * grooves.Depth / thickness;
            through = mouths * Passages.Duct(grooves.Width, grooves.Depth);
        }

        if (holes is not null)
        {
            double share = Math.PI * holes.Diameter * holes.Diameter / (4 * holes.Pitch * holes.Pitch);
            through = share * Passages.Round(holes.Diameter / 2);

            // Where a hole meets a groove the two share their volume.
            porosity += share * (1 - porosity);
        }

        return new(name, area, toolSkinShare, thickness, porosity, new Permeability(along, across, through, grooves?.Angle ?? 0));
    }
}
