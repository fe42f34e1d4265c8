namespace InfusionSim.Physics.Resins;

/// <summary>How thick a resin is, at any temperature and age.</summary>
public abstract record ViscosityModel
{
    /// <summary>The viscosity from mixing on, along the temperatures that the resin sees.</summary>
    /// <param name="temperature">The temperatures; null where nobody named one.</param>
    /// <param name="mixToOpen">From mixing until the first feed opens [s].</param>
    public abstract ViscosityCourse Along(TemperatureCourse? temperature, double mixToOpen);
}
