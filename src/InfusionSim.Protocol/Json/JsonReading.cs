using Google.Protobuf;
using InfusionSim.Protocol.Faults;

namespace InfusionSim.Protocol.Json;

/// <summary>What was read from JSON, with every fault that was met on the way.</summary>
/// <typeparam name="T">The message.</typeparam>
/// <param name="Message">All that could be read; what was at fault is left out.</param>
/// <param name="Faults">The faults, in the order of the text; empty when all of it could be read.</param>
public sealed record JsonReading<T>(T Message, IReadOnlyList<Fault> Faults)
    where T : IMessage<T>;
