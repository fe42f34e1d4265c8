using System.Text;
using CsCheck;
using Grpc.Core;
using Grpc.Net.Client;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Hosting;
using InfusionSim.Service.Tests.Fills;

namespace InfusionSim.Service.Tests.Transport;

/// <summary>Whatever is sent, the service answers with a forecast or with what is wrong, and goes on serving. With the real physics.</summary>
public sealed class HostileCallerTests
{
    private static readonly StatusCode[] Refusals = [StatusCode.InvalidArgument, StatusCode.ResourceExhausted];

    private static async Task PredictAsync(FillService.FillServiceClient client, InfusionPlan plan)
    {
        try
        {
            PredictFillResponse answer = await client.PredictFillAsync(new PredictFillRequest { Plan = plan }, deadline: DateTime.UtcNow.AddSeconds(60));
            answer.Forecast.Outcome.ShouldNotBe(Outcome.Unspecified);
            answer.Forecast.Findings.ShouldAllBe(finding => finding.Sentence.Length > 0);
            Math.Abs(answer.Forecast.MassBalanceErrorRatio).ShouldBeLessThan(1e-9);
        }
        catch (RpcException refusal)
        {
            Refusals.ShouldContain(refusal.StatusCode, refusal.Status.Detail);
        }
    }

    private static readonly Gen<Point> Place = Gen.Select(Gen.Int[0, 24], Gen.Int[0, 16]).Select((x, y) => new Point { XMm = 25 * x, YMm = 25 * y });

    private static readonly Gen<Protocol.V1.Path> Line = Place.Array[1, 3].Select(points => new Protocol.V1.Path { Points = { points } });

    private static readonly Gen<Ring> Patch = Gen.Select(Gen.Int[1, 15], Gen.Int[1, 9], Gen.Int[1, 8], Gen.Int[1, 6]).Select((x, y, width, height) => new Ring
    {
        Points =
        {
            new Point { XMm = 25 * x, YMm = 25 * y },
            new Point { XMm = 25 * (x + width), YMm = 25 * y },
            new Point { XMm = 25 * (x + width), YMm = 25 * (y + height) + 7 },
        },
    });

    private static readonly Gen<InfusionPlan> Drawn =
        Gen.Select(
            Line.Array[1, 2], Line.Array[0, 2], Patch.Array[0, 2], Patch.Array[0, 2], Gen.Double[-12, -8], Gen.Double[-3, 1.9], Gen.Double[7, 2000],
            Gen.Int[0, 7])
            .Select((feeds, vents, cutouts, zones, permeability, viscosity, gelTime, shape) => StraightStrip.With(plan =>
            {
                plan.Feeds.Clear();
                plan.Vents.Clear();
                plan.Feeds.AddRange(feeds.Select(path => new Feed { Path = path, ContactWidthMm = 8 }));
                plan.Vents.AddRange(vents.Select((path, k) => new Vent { Path = path, Kind = (k + shape) % 3 != 0 ? VentKind.Tube : VentKind.Membrane }));
                plan.Preform.Cutouts.AddRange(cutouts);
                foreach (Ring area in zones)
                {
                    Zone zone = plan.Preform.Zones[0].Clone();
                    (zone.Name, zone.Area, zone.Permeability.K1M2) = ("", area, Math.Pow(10, permeability));
                    plan.Preform.Zones.Add(zone);
                }

                if (shape == 0) plan.Preform.Outline.Points[2] = new Point { XMm = 310, YMm = 390 };
                plan.Resin.ViscosityPaS = Math.Pow(10, viscosity);
                plan.Resin.GelTimeMin = gelTime;
                plan.Resolution.CellMm = 20 + shape;
            }));

    [Fact]
    public async Task PredictFill_AnyDrawing_AnswersAForecastOrWhatIsWrong()
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using GrpcChannel channel = GrpcChannel.ForAddress(host.GrpcAddress);
        var client = new FillService.FillServiceClient(channel);

        await Drawn.SampleAsync(plan => PredictAsync(client, plan), iter: 120, threads: 2);
    }

    [Fact]
    public async Task PredictFill_MutatedJson_AnswersAForecastOrWhatIsWrong()
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using var client = new HttpClient { BaseAddress = host.HttpAddress };
        string request = $"{{\"plan\": {StraightStrip.Json.Replace("\"cellMm\": 5", "\"cellMm\": 40")}}}";

        await Gen.Select(Gen.Int[0, request.Length - 1], Gen.Byte).Array[1, 3].SampleAsync(
            async edits =>
            {
                byte[] body = Encoding.UTF8.GetBytes(request);
                foreach ((int place, byte value) in edits) body[place % body.Length] = value;
                using var content = new ByteArrayContent(body);
                using HttpResponseMessage response = await client.PostAsync(new Uri("/v1/fills:predict", UriKind.Relative), content);
                ((int)response.StatusCode).ShouldBeOneOf(200, 400);
            },
            iter: 200,
            threads: 2);
    }

    [Fact]
    public async Task PredictFill_AnyBytes_AreRefusedAsNoMessage()
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using GrpcChannel channel = GrpcChannel.ForAddress(host.GrpcAddress);
        CallInvoker invoker = channel.CreateCallInvoker();
        var bytes = Marshallers.Create(raw => raw, raw => raw);
        var method = new Method<byte[], byte[]>(MethodType.Unary, "infusionsim.v1.FillService", "PredictFill", bytes, bytes);

        await Gen.Byte.Array[0, 60].SampleAsync(
            async raw =>
            {
                RpcException refusal = await Should.ThrowAsync<RpcException>(() => invoker.AsyncUnaryCall(method, null, default, raw).ResponseAsync);
                refusal.StatusCode.ShouldBe(StatusCode.InvalidArgument);
            },
            iter: 200,
            threads: 2);
    }
}
