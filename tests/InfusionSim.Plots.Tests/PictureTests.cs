using System.Text;
using System.Xml.Linq;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Tests.Samples;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Tests;

public class PictureTests
{
    private static readonly Dictionary<string, Func<InfusionPlan, PredictFillResponse, Picture>> Kinds = new()
    {
        ["front"] = Front.Draw,
        ["pressure"] = (plan, response) => Pressure.Draw(plan, response, Answers.Moments(response, 8)[4]),
        ["progress"] = (plan, response) => WetShare.Draw(plan, response, Answers.Moments(response, 40)),
        ["strip"] = (plan, response) => Strip.Draw(plan, response, Answers.Moments(response, 8)),
        ["tool-side"] = (plan, response) => Front.Draw(plan, response, PanelFace.ToolSide),
        ["both-sides"] = BothSides.Draw,
        ["lag"] = LagMap.Draw,
        ["lines"] = LinePressure.Draw,
        ["comparison"] = (plan, response) => Comparison.Draw([(plan, response), (plan, response)]),
    };

    private static readonly string[] OfLayUp = ["tool-side", "both-sides", "lag", "lines"];

    public static TheoryData<string> Names => [.. Kinds.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Picture_AnyKind_IsSizedForAPage(string name)
    {
        var picture = Draw(name);

        picture.Width.ShouldBe(900);
        picture.Height.ShouldBeInRange(250, 1300);
        using var bitmap = SKBitmap.Decode(picture.PngBytes());
        (bitmap.Width, bitmap.Height).ShouldBe((picture.Width, picture.Height));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Picture_AnyKind_ShowsItsTitleInTheShippedFont(string name)
    {
        // A machine without fonts would leave the title's place white.
        using var bitmap = Draw(name).Render(1);

        CountDark(bitmap, new SKRectI(20, 14, 240, 60)).ShouldBeGreaterThan(300);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Picture_AnyKind_IsTheSameEachTime(string name)
    {
        var (first, second) = (Draw(name), Draw(name));

        first.PngBytes().AsSpan().SequenceEqual(second.PngBytes()).ShouldBeTrue();
        Encoding.UTF8.GetString(first.SvgBytes()).ShouldBe(Encoding.UTF8.GetString(second.SvgBytes()));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Svg_AnyKind_CarriesItsTextsAndItsSentence(string name)
    {
        var picture = Draw(name);
        var root = XDocument.Parse(Encoding.UTF8.GetString(picture.SvgBytes())).Root.ShouldNotBeNull();
        var space = root.Name.Namespace;

        root.Element(space + "title").ShouldNotBeNull().Value.ShouldBe(picture.Sentence);
        root.Descendants(space + "text").Select(text => text.Value.Trim()).ShouldContain(text => text.StartsWith("Sled deck", StringComparison.Ordinal));
        root.Descendants(space + "text").ShouldAllBe(text => text.Attribute("font-family")!.Value.StartsWith($"'{Fonts.Family}'", StringComparison.Ordinal));
        root.Descendants(space + "text").ShouldAllBe(text => text.Attribute("textLength") != null, "another font fits into the same room");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Picture_AnyKind_IsSmall(string name)
    {
        Draw(name).PngBytes().Length.ShouldBeLessThan(150_000);
        Draw(name).SvgBytes().Length.ShouldBeLessThan(150_000);
    }

    [Fact]
    public void Save_UnknownEnding_SaysWhichAreKnown()
    {
        var (plan, response) = SamplePanels.Strip();

        Should.Throw<ArgumentException>(() => Front.Draw(plan, response).Save("front.bmp")).Message.ShouldContain(".png nor in .svg");
    }

    [Fact]
    public void Draw_NoFrontMap_SaysWhatToAskFor()
    {
        var (plan, response) = SamplePanels.Strip();
        response.FrontMap = null;

        Should.Throw<ArgumentException>(() => Front.Draw(plan, response)).Message.ShouldContain("with_front_map");
    }

    [Fact]
    public void Draw_NoPressure_SaysWhatToAskFor()
    {
        var (plan, response) = SamplePanels.Strip();
        var moment = Answers.Moments(response, 1)[0];
        moment.PressureMbarAbs.Clear();

        Should.Throw<ArgumentException>(() => Pressure.Draw(plan, response, moment)).Message.ShouldContain("with_pressure");
    }

    [Fact]
    public void Animation_Deck_IsAWebpWithOneFrameForEachMoment()
    {
        var (plan, response) = SamplePanels.HoleAndDrySpot();
        var animation = Animation.Draw(plan, response, Answers.Moments(response, 12));

        using var codec = SKCodec.Create(new MemoryStream(animation.WebpBytes()));

        codec.EncodedFormat.ShouldBe(SKEncodedImageFormat.Webp);
        codec.FrameCount.ShouldBe(12);
        codec.RepetitionCount.ShouldBe(-1, "it runs over and over");
        animation.WebpBytes().AsSpan().SequenceEqual(animation.WebpBytes()).ShouldBeTrue();
    }

    private static Picture Draw(string name)
    {
        var (plan, response) = OfLayUp.Contains(name) ? SamplePanels.LayUp() : SamplePanels.HoleAndDrySpot();
        return Kinds[name](plan, response);
    }

    private static int CountDark(SKBitmap bitmap, SKRectI box) =>
        Enumerable.Range(box.Left, box.Width).Sum(x => Enumerable.Range(box.Top, box.Height).Count(y => bitmap.GetPixel(x, y).Red < 90));
}
