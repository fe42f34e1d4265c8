using Google.Protobuf;

namespace InfusionSim.Protocol.Json;

/// <summary>Writes messages as proto-JSON: empty lists and zeros are printed, what does not exist is left out, choices by name.</summary>
public static class MessageWriter
{
    private static readonly JsonFormatter Full = new(JsonFormatter.Settings.Default.WithFormatDefaultValues(true));
    private static readonly JsonFormatter FullIndented = new(JsonFormatter.Settings.Default.WithFormatDefaultValues(true).WithIndentation());
    private static readonly JsonFormatter Sparse = new(JsonFormatter.Settings.Default);
    private static readonly JsonFormatter SparseIndented = new(JsonFormatter.Settings.Default.WithIndentation());

    /// <summary>Writes an answer, with its zeros and empty lists.</summary>
    /// <param name="message">The answer; holds finite numbers only.</param>
    /// <param name="indented">Over several lines, as in a file.</param>
    public static string WriteAnswer(IMessage message, bool indented = false) => (indented ? FullIndented : Full).Format(message);

    /// <summary>Writes only what was given, so that defaults stay defaults when it is read again.</summary>
    /// <param name="message">The message.</param>
    /// <param name="indented">Over several lines, as in a file.</param>
    public static string WriteGiven(IMessage message, bool indented = true) => (indented ? SparseIndented : Sparse).Format(message);
}
