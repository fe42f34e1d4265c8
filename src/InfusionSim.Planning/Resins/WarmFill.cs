using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Planning.Resins;

/// <summary>A fill on a flow that has been followed, at another temperature: another clock, no solve.</summary>
/// <param name="Temperature">The temperature of resin and panel all along [K].</param>
/// <param name="FillTime">Fill time [s]; +∞ when it gels first.</param>
/// <param name="GelMargin">Gel margin [-].</param>
internal readonly record struct WarmFill(double Temperature, double FillTime, double GelMargin)
{
    /// <summary>The fill at a temperature.</summary>
    /// <param name="resin">The resin.</param>
    /// <param name="bag">What drives it.</param>
    /// <param name="fullClock">Drive clock at which the last place that can fill is full [-].</param>
    /// <param name="temperature">The temperature [K].</param>
    public static WarmFill At(Resin resin, Bag bag, double fullClock, double temperature)
    {
        DriveClock clock = new(resin with { Temperature = new TemperatureCourse(temperature) }, bag);
        return new(temperature, clock.TimeAt(fullClock), clock.GelClock / fullClock);
    }
}
