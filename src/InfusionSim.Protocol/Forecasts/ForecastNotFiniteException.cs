namespace InfusionSim.Protocol.Forecasts;

/// <summary>The computation came out with a number that is none; a fault of the program, never of the plan.</summary>
public sealed class ForecastNotFiniteException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">Which number.</param>
    public ForecastNotFiniteException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception.</summary>
    public ForecastNotFiniteException()
    {
    }

    /// <summary>Makes the exception.</summary>
    /// <param name="message">Which number.</param>
    /// <param name="innerException">What led to it.</param>
    public ForecastNotFiniteException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
