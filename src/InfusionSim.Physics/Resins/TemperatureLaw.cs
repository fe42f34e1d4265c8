namespace InfusionSim.Physics.Resins;

/// <summary>How a viscosity or a time of a resin changes with temperature, counted from the temperature at which it was measured.</summary>
/// <param name="Reference">Temperature at which it was measured [K], above 0.</param>
public abstract record TemperatureLaw(double Reference)
{
    /// <summary>What the measured number is multiplied by [-]; 1 at the reference, less where it is warmer.</summary>
    /// <param name="temperature">Temperature [K], above 0.</param>
    public abstract double FactorAt(double temperature);

    /// <summary>The same at a time [-]; 1 where nobody named a temperature.</summary>
    /// <param name="course">The temperatures; null where nobody named one.</param>
    /// <param name="time">Time from the opening of the first feed [s].</param>
    public double FactorAt(TemperatureCourse? course, double time) => course is null ? 1 : FactorAt(course.At(time));
}
