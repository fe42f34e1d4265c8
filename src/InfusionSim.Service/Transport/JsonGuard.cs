using System.Text;
using Google.Protobuf;
using Grpc.Core;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Requests;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Hosting;
using Microsoft.AspNetCore.Grpc.JsonTranscoding;

namespace InfusionSim.Service.Transport;

/// <summary>Reads the JSON of a request strictly before the transport does.</summary>
/// <remarks>The transport turns an unknown key into nothing and lets NaN pass; behind this guard it sees only what this project has read and written again.</remarks>
internal sealed class JsonGuard(RequestDelegate next)
{
    private static readonly JsonFormatter ErrorFormatter = new(JsonFormatter.Settings.Default.WithFormatDefaultValues(true).WithTypeRegistry(ServiceParts.ErrorDetails));

    /// <summary>Reads the request, answers its faults or passes it on.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        GrpcJsonTranscodingMetadata? method = context.GetEndpoint()?.Metadata.GetMetadata<GrpcJsonTranscodingMetadata>();
        if (method is null || context.Request.ContentType?.StartsWith("application/grpc", StringComparison.OrdinalIgnoreCase) == true)
        {
            await next(context);
            return;
        }

        byte[]? body = await ReadBodyAsync(context.Request);
        if (body is null)
        {
            string text = $"The request is longer than {RequestLimits.MostRequestBytes / 1024 / 1024} MiB.";
            await AnswerAsync(context, StatusCodes.Status413PayloadTooLarge, FaultStatus.Of(StatusCode.ResourceExhausted, text, ErrorReason.TooLarge));
            return;
        }

        IMessage request = method.MethodDescriptor.InputType.Parser.ParseFrom(ByteString.Empty);
        IReadOnlyList<Fault> found = MessageReader.ReadInto(request, body, "request");
        if (found.Count > 0)
        {
            PlanCheck check = RequestChecker.Check(request, found);
            await AnswerAsync(context, StatusCodes.Status400BadRequest, FaultStatus.Of(check.Faults));
            return;
        }

        byte[] rewritten = Encoding.UTF8.GetBytes(MessageWriter.WriteGiven(request, indented: false));
        context.Request.Body = new MemoryStream(rewritten, writable: false);
        context.Request.ContentLength = rewritten.Length;
        context.Request.ContentType = "application/json";
        await next(context);
    }

    private static async Task<byte[]?> ReadBodyAsync(HttpRequest request)
    {
        using var body = new MemoryStream();
        byte[] piece = new byte[16 * 1024];
        long length = 0;
        int count;
        while ((count = await request.Body.ReadAsync(piece, request.HttpContext.RequestAborted)) > 0)
        {
            // What is too long is still read to its end, unkept: a caller cut off in the middle never sees why.
            length += count;
            if (length <= RequestLimits.MostRequestBytes) body.Write(piece, 0, count);
        }

        if (length > RequestLimits.MostRequestBytes) return null;
        return body.ToArray();
    }

    private static async Task AnswerAsync(HttpContext context, int code, Google.Rpc.Status status)
    {
        context.Response.StatusCode = code;
        context.Response.ContentType = "application/json";
        await context.Response.WriteAsync(ErrorFormatter.Format(status), context.RequestAborted);
    }
}
