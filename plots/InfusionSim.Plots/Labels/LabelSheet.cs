using SkiaSharp;

namespace InfusionSim.Plots.Labels;

/// <summary>What is taken on a picture: every label asks here before it is put down.</summary>
/// <param name="bounds">Where labels may lie [px].</param>
internal sealed class LabelSheet(SKRect bounds)
{
    private readonly List<LabelBox> _taken = [];

    /// <summary>Labels put down so far, in order.</summary>
    internal List<PlacedLabel> Labels { get; } = [];

    /// <summary>Where labels may lie [px].</summary>
    internal SKRect Bounds => bounds;

    /// <summary>Keeps a place free of labels.</summary>
    internal void Block(LabelBox box) => _taken.Add(box);

    /// <summary>Keeps a line free of labels.</summary>
    internal void Block(IReadOnlyList<SKPoint> line, float width)
    {
        for (var i = 0; i + 1 < line.Count; i++)
        {
            Block(LabelBox.Around(line[i], line[i + 1], width));
        }

        if (line.Count == 1)
        {
            Block(new LabelBox(line[0], width / 2, width / 2));
        }
    }

    /// <summary>Whether a box lies within the bounds and touches nothing that is taken.</summary>
    internal bool IsFree(LabelBox box, float margin = 3)
    {
        var grown = box.Grow(margin);
        return box.Corners().All(corner => bounds.Contains(corner)) && !_taken.Any(grown.Overlaps);
    }

    /// <summary>Puts a label down and keeps its place.</summary>
    internal void Put(PlacedLabel label)
    {
        Labels.Add(label);
        Block(label.Box);
    }
}
