namespace InfusionSim.Numerics.Integration;

/// <summary>Says that differential equations change too fast for their length to be followed step by step.</summary>
public sealed class StiffEquationsException : Exception
{
    /// <summary>Makes the exception with its usual text.</summary>
    public StiffEquationsException() : base("The equations change too fast to be followed in 200,000 steps.")
    {
    }

    /// <summary>Makes the exception.</summary>
    /// <param name="message">What happened.</param>
    public StiffEquationsException(string message) : base(message)
    {
    }

    /// <summary>Makes the exception.</summary>
    /// <param name="message">What happened.</param>
    /// <param name="innerException">What caused it.</param>
    public StiffEquationsException(string message, Exception innerException) : base(message, innerException)
    {
    }
}
