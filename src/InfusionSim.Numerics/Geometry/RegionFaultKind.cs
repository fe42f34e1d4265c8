namespace InfusionSim.Numerics.Geometry;

/// <summary>What is wrong with a drawn region.</summary>
public enum RegionFaultKind
{
    /// <summary>A coordinate is not a finite number.</summary>
    NotFinite,

    /// <summary>A ring has fewer than three distinct points.</summary>
    TooFewPoints,

    /// <summary>A ring encloses no area: its points lie on one line.</summary>
    NoArea,

    /// <summary>A ring crosses or touches itself.</summary>
    CrossesItself,

    /// <summary>A cut-out lies outside the outline.</summary>
    CutoutOutside,

    /// <summary>A cut-out crosses or touches the outline.</summary>
    CutoutMeetsOutline,

    /// <summary>A cut-out crosses, touches, holds or lies in another one.</summary>
    CutoutsMeet,
}
