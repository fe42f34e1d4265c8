namespace InfusionSim.Physics.Flow;

/// <summary>The solver did not reach its tolerance: a fault of the program, not of the panel.</summary>
public sealed class FlowNotSolvedException : Exception
{
    /// <summary>Makes an exception.</summary>
    /// <param name="message">What was not found, with the solver's report.</param>
    public FlowNotSolvedException(string message) : base(message) { }
}
