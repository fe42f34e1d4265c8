namespace InfusionSim.Physics.Resins;

/// <summary>A viscosity that never changes.</summary>
internal sealed class LevelCourse : ViscosityCourse
{
    private readonly double viscosity;

    /// <summary>A level course.</summary>
    /// <param name="viscosity">Viscosity [Pa·s], above 0.</param>
    public LevelCourse(double viscosity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(viscosity);
        this.viscosity = viscosity;
    }

    /// <inheritdoc/>
    public override bool IsConstant => true;

    /// <inheritdoc/>
    public override double At(double time) => viscosity;
}
