namespace InfusionSim.Physics.Resins;

/// <summary>The viscosity of one mix over time.</summary>
public abstract class ViscosityCourse
{
    /// <summary>Whether it never changes.</summary>
    public virtual bool IsConstant => false;

    /// <summary>Until when it is known, from the opening of the first feed [s]; +∞ for ever.</summary>
    public virtual double KnownUntil => double.PositiveInfinity;

    /// <summary>Times at which it bends, from the opening of the first feed [s], ascending.</summary>
    public virtual IReadOnlyList<double> Kinks => [];

    /// <summary>Viscosity [Pa·s]; +∞ once it has gelled.</summary>
    /// <param name="time">Time from the opening of the first feed [s]; before it counts below 0.</param>
    public abstract double At(double time);
}
