namespace InfusionSim.Protocol.Requests;

/// <summary>How large a request and an answer may be.</summary>
public static class RequestLimits
{
    /// <summary>Largest request [bytes].</summary>
    public const int MostRequestBytes = Json.MessageReader.MostBytes;

    /// <summary>Largest single message of an answer [bytes]: the map of the most squares needs 5 MiB, the rest is room for names. A client must allow as much.</summary>
    public const int MostAnswerBytes = 32 * 1024 * 1024;

    /// <summary>Moments of one fill that can be watched [-].</summary>
    public const int MostMoments = 200;

    /// <summary>Moments that are shown when a request names none [-].</summary>
    public const int UsualMoments = 12;

    /// <summary>Resins that one question compares [-].</summary>
    public const int MostResins = 20;
}
