using Grpc.Core;
using Grpc.Net.Client;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Hosting;

namespace InfusionSim.Gallery.Pictures;

/// <summary>Asks the service, started inside this program, through the same contract as every other client.</summary>
internal static class Asking
{
    /// <summary>Moments asked for: enough for a smooth animation, a multiple of the eight of a strip [-].</summary>
    internal const int Moments = 24;

    /// <summary>The answers to all plans of a folder, in the order of their names.</summary>
    internal static async Task<IReadOnlyList<Answered>> AskAllAsync(string folder)
    {
        await using var host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using var channel = GrpcChannel.ForAddress(host.GrpcAddress);
        var client = new FillService.FillServiceClient(channel);
        var answers = new List<Answered>();
        foreach (var file in Directory.GetFiles(folder, "*.json").Order(StringComparer.Ordinal))
        {
            answers.Add(await AskAsync(client, System.IO.Path.GetFileNameWithoutExtension(file), Read(file)));
        }

        return answers;
    }

    /// <summary>What the resins of a folder do on a plan, in the order of their files' names.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="folder">Folder of the resin cards.</param>
    internal static async Task<CompareResinsResponse> CompareAsync(InfusionPlan plan, string folder)
    {
        await using var host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using var channel = GrpcChannel.ForAddress(host.GrpcAddress);
        var request = new CompareResinsRequest { Plan = plan };
        foreach (var file in Directory.GetFiles(folder, "*.json").Order(StringComparer.Ordinal))
        {
            var reading = MessageReader.Read<Resin>(await File.ReadAllBytesAsync(file), "resin card");
            request.Cards.Add(reading.Faults.Count == 0 ? reading.Message : throw new InvalidDataException($"{file}: {string.Join("; ", reading.Faults)}"));
        }

        return await new ResinService.ResinServiceClient(channel).CompareResinsAsync(request);
    }

    private static InfusionPlan Read(string file)
    {
        var reading = PlanJson.Read(File.ReadAllText(file));
        return reading.Faults.Count == 0
            ? reading.Message
            : throw new InvalidDataException($"{file}: {string.Join("; ", reading.Faults)}");
    }

    private static async Task<Answered> AskAsync(FillService.FillServiceClient client, string name, InfusionPlan plan)
    {
        var moments = new List<FillMoment>();
        PredictFillResponse? response = null;
        using var call = client.WatchFill(new WatchFillRequest { Plan = plan, Moments = Moments, WithPressure = true, WithQualityMaps = true });
        await foreach (var message in call.ResponseStream.ReadAllAsync())
        {
            if (message.Moment is { } moment)
            {
                moments.Add(moment);
            }

            response = message.Forecast ?? response;
        }

        return new Answered(name, plan, response ?? throw new InvalidDataException($"{name}: the service gave no forecast."), moments);
    }
}
