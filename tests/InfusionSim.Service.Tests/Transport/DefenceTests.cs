using System.Buffers.Binary;
using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using Google.Protobuf;
using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Reflection.V1Alpha;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Tests.Fills;
using InfusionSim.Service.Tests.Hosting;

namespace InfusionSim.Service.Tests.Transport;

public sealed class DefenceTests
{
    // One gRPC message by hand: flag, length, bytes (gRPC over HTTP/2, length-prefixed message).
    private static async Task<(string Status, HttpResponseMessage Response)> SendFrameAsync(RunningService service, byte[] payload, bool compressed)
    {
        byte[] frame = new byte[5 + payload.Length];
        frame[0] = compressed ? (byte)1 : (byte)0;
        BinaryPrimitives.WriteInt32BigEndian(frame.AsSpan(1), payload.Length);
        payload.CopyTo(frame, 5);
        using var client = new HttpClient { DefaultRequestVersion = HttpVersion.Version20, DefaultVersionPolicy = HttpVersionPolicy.RequestVersionExact };
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(service.Host.GrpcAddress, "/infusionsim.v1.FillService/PredictFill"))
        {
            Version = HttpVersion.Version20,
            VersionPolicy = HttpVersionPolicy.RequestVersionExact,
            Content = new ByteArrayContent(frame),
        };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/grpc");
        request.Headers.TE.Add(new TransferCodingWithQualityHeaderValue("trailers"));
        if (compressed) request.Headers.Add("grpc-encoding", "gzip");
        HttpResponseMessage response = await client.SendAsync(request);
        await response.Content.ReadAsByteArrayAsync();
        return ((response.TrailingHeaders.Concat(response.Headers).First(header => header.Key == "grpc-status").Value).First(), response);
    }

    [Fact]
    public async Task PredictFill_SmallRequestThatUnpacksHuge_IsRefusedBeforeItUnpacks()
    {
        await using RunningService service = await RunningService.StartAsync();
        using var packed = new MemoryStream();
        using (var zip = new GZipStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            for (int k = 0; k < 256; k++) zip.Write(new byte[1024 * 1024]);
        packed.Length.ShouldBeLessThan(400 * 1024);
        long before = GC.GetTotalAllocatedBytes();

        (string status, HttpResponseMessage response) = await SendFrameAsync(service, packed.ToArray(), compressed: true);

        response.Dispose();
        status.ShouldBe(((int)StatusCode.ResourceExhausted).ToString());
        (GC.GetTotalAllocatedBytes() - before).ShouldBeLessThan(64L * 1024 * 1024);
    }

    [Theory]
    [InlineData(new byte[] { 0xFF, 0xFF, 0xFF, 0xFF })]
    [InlineData(new byte[] { 0x0A, 0x7F, 0x00 })]
    [InlineData(new byte[] { 0x0B })]
    public async Task PredictFill_BytesThatAreNoMessage_AreNamedSo(byte[] bytes)
    {
        await using RunningService service = await RunningService.StartAsync();

        (string status, HttpResponseMessage response) = await SendFrameAsync(service, bytes, compressed: false);

        response.Dispose();
        status.ShouldBe(((int)StatusCode.InvalidArgument).ToString());
    }

    [Theory]
    [InlineData("evil.example", HttpStatusCode.BadRequest)]
    [InlineData("localhost", HttpStatusCode.OK)]
    public async Task Request_UnderAnotherName_IsRefused(string host, HttpStatusCode expected)
    {
        await using RunningService service = await RunningService.StartAsync();
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/v1/fills:predict", UriKind.Relative)) { Content = StraightStrip.Request(StraightStrip.Json) };
        request.Headers.Host = $"{host}:{service.Host.HttpAddress.Port}";

        using HttpResponseMessage response = await service.Json.SendAsync(request);

        response.StatusCode.ShouldBe(expected);
    }

    [Theory]
    [InlineData("https://evil.example", false)]
    [InlineData("null", false)]
    [InlineData("http://localhost:1", false)]
    [InlineData("http://127.0.0.1", true)]
    public async Task Request_FromAPage_IsTakenOnlyFromThisService(string origin, bool isTaken)
    {
        await using RunningService service = await RunningService.StartAsync();
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/v1/fills:predict", UriKind.Relative)) { Content = StraightStrip.Request(StraightStrip.Json) };
        request.Headers.Add("Origin", isTaken ? $"{origin}:{service.Host.HttpAddress.Port}" : origin);

        using HttpResponseMessage response = await service.Json.SendAsync(request);

        response.StatusCode.ShouldBe(isTaken ? HttpStatusCode.OK : HttpStatusCode.Forbidden);
        response.Headers.GetValues("X-Content-Type-Options").ShouldBe(["nosniff"]);
    }

    [Fact]
    public async Task PredictFill_RequestBeyondTheLimit_IsRefused()
    {
        await using RunningService service = await RunningService.StartAsync();
        var request = new PredictFillRequest { Plan = StraightStrip.With(plan => plan.Title = new string('x', 5 * 1024 * 1024)) };

        RpcException grpc = await Should.ThrowAsync<RpcException>(() => service.Grpc.PredictFillAsync(request).ResponseAsync);
        using HttpResponseMessage json = await service.Json.PostAsync(
            new Uri("/v1/fills:predict", UriKind.Relative), new StringContent(JsonFormatter.Default.Format(request)));

        grpc.StatusCode.ShouldBe(StatusCode.ResourceExhausted);
        json.StatusCode.ShouldBe(HttpStatusCode.RequestEntityTooLarge);
        (await json.Content.ReadAsStringAsync()).ShouldContain("ERROR_REASON_TOO_LARGE");
    }

    [Fact]
    public async Task Health_RunningService_IsServing()
    {
        await using RunningService service = await RunningService.StartAsync();

        HealthCheckResponse answer = await new Health.HealthClient(service.Channel).CheckAsync(new HealthCheckRequest());

        answer.Status.ShouldBe(HealthCheckResponse.Types.ServingStatus.Serving);
    }

    [Fact]
    public async Task Reflection_RunningService_ListsTheFillService()
    {
        await using RunningService service = await RunningService.StartAsync();
        using var call = new ServerReflection.ServerReflectionClient(service.Channel).ServerReflectionInfo();
        await call.RequestStream.WriteAsync(new ServerReflectionRequest { ListServices = "" });
        await call.RequestStream.CompleteAsync();

        (await call.ResponseStream.MoveNext()).ShouldBeTrue();

        call.ResponseStream.Current.ListServicesResponse.Service.Select(listed => listed.Name).ShouldContain("infusionsim.v1.FillService");
    }
}
