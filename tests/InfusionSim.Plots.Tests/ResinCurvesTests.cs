using System.Text;
using System.Xml.Linq;
using InfusionSim.Plots.Charts;
using InfusionSim.Plots.Tests.Samples;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Tests;

public class ResinCurvesTests
{
    private static readonly InfusionPlan Plan = SamplePanels.Strip().Plan;

    private static IEnumerable<string> Texts(Picture picture) =>
        XDocument.Parse(Encoding.UTF8.GetString(picture.SvgBytes())).Descendants().Where(element => element.Name.LocalName == "text").Select(element => element.Value.Trim());

    [Fact]
    public void Draw_FewResins_NamesEachOnItsCurve()
    {
        var picture = ResinCurves.Draw(Plan, ResinAnswers.Strip(4));

        var texts = Texts(picture).ToArray();
        texts.ShouldContain("1 Resin A: full at 10 min");
        texts.Count(text => text.StartsWith("3 Resin C", StringComparison.Ordinal)).ShouldBe(2, "on its curve and in the key");
        texts.ShouldContain("3 Resin C: gels at 5 min, 50 % full");
        texts.ShouldContain("1 Resin A: full at 10 min, gel at 16 min (best)");
        texts.ShouldContain("1 gels");
        picture.Sentence.ShouldEndWith("Resin A, the quickest to fill: full 10 min after opening.");
    }

    [Fact]
    public void Draw_AsManyResinsAsAreCompared_FitsOnAPage()
    {
        var picture = ResinCurves.Draw(Plan, ResinAnswers.Strip(20));

        picture.Width.ShouldBe(900);
        picture.Height.ShouldBeLessThan(1600);
        picture.PngBytes().Length.ShouldBeLessThan(400_000);
        Texts(picture).Count(text => text.Contains(": full at ", StringComparison.Ordinal) || text.Contains(": gels at ", StringComparison.Ordinal)).ShouldBe(20, "the key names all");
    }

    [Fact]
    public void Draw_TheSameAnswer_IsTheSamePicture() =>
        ResinCurves.Draw(Plan, ResinAnswers.Strip(3)).PngBytes().AsSpan().SequenceEqual(ResinCurves.Draw(Plan, ResinAnswers.Strip(3)).PngBytes()).ShouldBeTrue();

    [Fact]
    public void Draw_NoCurve_SaysWhatIsMissing()
    {
        var answer = ResinAnswers.Strip(2);
        answer.Resins[1].Curve.Clear();

        Should.Throw<ArgumentException>(() => ResinCurves.Draw(Plan, answer)).Message.ShouldContain("without its curve");
    }

    [Fact]
    public void Styles_OfTwentyResins_AreAllDifferentInGreyTooForNeighbours()
    {
        var styles = Enumerable.Range(0, 20).Select(ResinLineStyle.Of).ToArray();

        styles.Select(style => (style.Colour, string.Join(' ', style.Dashes))).Distinct().Count().ShouldBe(20);
        styles.Zip(styles.Skip(1)).ShouldAllBe(pair => string.Join(' ', pair.First.Dashes) != string.Join(' ', pair.Second.Dashes));
    }

    [Fact]
    public void Labels_OfTheProgress_CoverNoCurve()
    {
        var lines = ResinLine.Of(ResinAnswers.Strip(4));
        var chart = new ResinProgressChart(lines, ResinScale.Of(lines), SKRect.Create(80, 100, 780, 380));

        chart.Sheet.Labels.Count.ShouldBeGreaterThanOrEqualTo(6);
        foreach (var label in chart.Sheet.Labels)
        {
            lines.SelectMany(chart.Curve).ShouldAllBe(point => !label.Box.Contains(point), label.Text);
        }
    }

    [Fact]
    public void Scale_GelFarBeyondTheEnd_IsNotShown()
    {
        var lines = ResinLine.Of(new CompareResinsResponse { Resins = { ResinAnswers.Resin("near", 600, 1.5), ResinAnswers.Resin("far", 600, 40) } });

        var scale = ResinScale.Of(lines);

        scale.Shows(900).ShouldBeTrue();
        scale.Shows(24000).ShouldBeFalse();
        scale.Unit.ShouldBe("min");
    }

    [Fact]
    public void Frame_CurveThatLeavesIt_IsCutAtItsEdge()
    {
        var frame = new CurveFrame(SKRect.Create(0, 0, 100, 100), new ResinScale(10, 1, "s"), 0, 1);

        var shown = frame.Curve([(0, 0), (5, 0.5), (15, 1.5)]);

        shown[^1].X.ShouldBe(100, 1e-3);
        shown[^1].Y.ShouldBe(0, 1e-3);
        shown.Length.ShouldBe(3);
    }
}
