using System.Text;
using System.Text.Json;
using Google.Protobuf;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Json;

/// <summary>Reads proto-JSON strictly into a message and gathers every fault: unknown or repeated keys, wrong types, numbers that are none.</summary>
/// <remarks>
/// The usual readers stop at the first fault, drop unknown keys or turn them to 0, and let NaN pass. A drawing with
/// one misspelt key must not be computed as if that key had been left out.
/// </remarks>
public static class MessageReader
{
    /// <summary>Largest text that is read [bytes].</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    /// <summary>Deepest nesting that is read [-]; a plan needs 8.</summary>
    public const int MostDepth = 24;

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a message.</summary>
    /// <typeparam name="T">The message.</typeparam>
    /// <param name="json">UTF-8 text, with or without a byte order mark.</param>
    /// <param name="what">What the text is called in a fault: plan, request.</param>
    public static JsonReading<T> Read<T>(ReadOnlyMemory<byte> json, string what)
        where T : IMessage<T>, new()
    {
        var message = new T();
        return new JsonReading<T>(message, ReadInto(message, json, what));
    }

    /// <summary>Reads JSON into an empty message.</summary>
    /// <param name="message">Takes all that can be read.</param>
    /// <param name="json">UTF-8 text, with or without a byte order mark.</param>
    /// <param name="what">What the text is called in a fault: plan, request.</param>
    public static IReadOnlyList<Fault> ReadInto(IMessage message, ReadOnlyMemory<byte> json, string what)
    {
        ArgumentNullException.ThrowIfNull(message);
        var faults = new FaultList();
        if (json.Length > MostBytes)
        {
            faults.Add("", $"The {what} is {json.Length / 1024 / 1024.0:0.0} MiB long; at most {MostBytes / 1024 / 1024} MiB are read.", ErrorReason.TooLarge);
            return faults.ToList();
        }

        if (json.Span.StartsWith(Encoding.UTF8.Preamble)) json = json[Encoding.UTF8.Preamble.Length..];
        try
        {
            StrictUtf8.GetCharCount(json.Span);
            using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = MostDepth });
            if (document.RootElement.ValueKind != JsonValueKind.Object)
                faults.Add("", $"The {what} must be a JSON object {{ … }}; it is {ValueReader.KindOf(document.RootElement)}.", ErrorReason.NotJson);
            else
                new ObjectReader(faults).Read(document.RootElement, message, "");
        }
        catch (JsonException exception)
        {
            string path = SyntaxPath.Of(json.Span);
            faults.Add(path, SyntaxFault.Describe(exception, json.Span, what, path), ErrorReason.NotJson);
        }
        catch (DecoderFallbackException exception)
        {
            faults.Add("", $"The {what} is not UTF-8 text: byte {exception.Index + 1} fits no letter. Save it as UTF-8.", ErrorReason.NotJson);
        }

        return faults.ToList();
    }
}
