namespace InfusionSim.Physics.Layers;

/// <summary>How far a flow mesh runs ahead of the far side of the laminate beside it, in a straight fill.</summary>
/// <remarks>
/// The front in the mesh leads; behind it resin sinks into the laminate along a flat front. With s the distance behind the leading front, z the wetted depth
/// and Π = K₁(p − p_v)/(μ v), the balances z dz/ds = K₃Π/(φ₂K₁) and dΠ/ds = φ₂z/h₁ + φ₁ hold (1 the mesh, 2 the laminate). With κ = K₃/(φ₂K₁) the lag is
/// ℓ = 6h₁/(φ₂√(2κ)) · (√(φ₂h₂/(3h₁) + φ₁/2) − √(φ₁/2)), whatever the speed and the viscosity. Derived for this project with the assumptions that the
/// literature on meshes shares: thin layers, a mesh that conducts much better than the laminate, no flow along the laminate inside the lag, a lag
/// that moves along unchanged, constant pressure. Valid behind a straight front farther than ℓ from its
/// feed. What runs along the laminate shortens the lag, by a sixth where K₂ is twenty times K₃ (our own runs), so the length here errs to the safe side.
/// </remarks>
/// <param name="MeshThickness">h₁ [m], above 0.</param>
/// <param name="MeshPermeability">K₁, along the flow [m²], above 0.</param>
/// <param name="MeshPorosity">φ₁ [-], at least 0.</param>
/// <param name="LaminateThickness">h₂ [m], above 0.</param>
/// <param name="LaminatePermeability">K₂, along the flow [m²], at least 0.</param>
/// <param name="ThroughPermeability">K₃ of the laminate, and of what lies between it and the mesh, through the thickness [m²], above 0.</param>
/// <param name="LaminatePorosity">φ₂ [-], above 0.</param>
public sealed record MeshLag(
    double MeshThickness,
    double MeshPermeability,
    double MeshPorosity,
    double LaminateThickness,
    double LaminatePermeability,
    double ThroughPermeability,
    double LaminatePorosity)
{
    private double Kappa => ThroughPermeability / (LaminatePorosity * MeshPermeability);

    /// <summary>Distance from the front in the mesh to that on the far side of the laminate, ℓ [m].</summary>
    public double Length => 6 * MeshThickness / (LaminatePorosity * Math.Sqrt(2 * Kappa))
        * (Math.Sqrt(LaminatePorosity * LaminateThickness / (3 * MeshThickness) + MeshPorosity / 2) - Math.Sqrt(MeshPorosity / 2));

    /// <summary>K₁(p − p_v)/(μ v) where the lag ends [m]: √((2/κ)(φ₂h₂³/(3h₁) + φ₁h₂²/2)).</summary>
    public double PressureLength => Math.Sqrt(2 / Kappa
        * (LaminatePorosity * Math.Pow(LaminateThickness, 3) / (3 * MeshThickness) + MeshPorosity * LaminateThickness * LaminateThickness / 2));

    /// <summary>Drive clock at which the laminate is wet through under the full pressure, φ₂h₂²/(2K₃) [-].</summary>
    public double ThroughClock => LaminatePorosity * LaminateThickness * LaminateThickness / (2 * ThroughPermeability);

    /// <summary>
    /// Drive clock at which the front in the mesh has come a distance [-]: (Φ/T)(L − ℓ)²/2 + (Π/K₁)(L − ℓ) + φ₂h₂²/(2K₃), with T = K₁h₁ + K₂h₂ and Φ
    /// = φ₁h₁ + φ₂h₂.
    /// </summary>
    /// <param name="distance">Distance from the feed, L [m]; above the lag.</param>
    public double ClockAt(double distance)
    {
        double behind = distance - Length;
        if (!(behind >= 0)) throw new ArgumentOutOfRangeException(nameof(distance), distance, $"The closed form holds only beyond the lag of {Length:G4} m.");
        double conductance = MeshPermeability * MeshThickness + LaminatePermeability * LaminateThickness;
        double pores = MeshPorosity * MeshThickness + LaminatePorosity * LaminateThickness;
        return pores / conductance * behind * behind / 2 + PressureLength / MeshPermeability * behind + ThroughClock;
    }
}
