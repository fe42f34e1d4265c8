using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>A picture of one panel: header, panel with axes in millimetres, key.</summary>
/// <param name="Sentence">What the picture says.</param>
/// <param name="View">Where the panel lies.</param>
internal sealed record PanelPage(string Sentence, PanelView View)
{
    private const float LabelBorder = 40;
    private const float MostHeight = 700;

    /// <summary>Lays out the page of a panel.</summary>
    /// <param name="cloth">Its cloth.</param>
    /// <param name="sentence">What the picture says.</param>
    /// <param name="mostHeight">Most that the panel takes [px].</param>
    internal static PanelPage For(ClothArea cloth, string sentence, float mostHeight = MostHeight)
    {
        var left = Theme.Margin + PanelFrame.LeftRoom - 10;
        var width = Theme.PictureWidth - Theme.Margin - left;
        var top = Header.Height(sentence, Theme.PictureWidth - 2 * Theme.Margin);
        var area = SKRect.Create(left, top, width, PanelView.HeightFor(cloth, width, LabelBorder, mostHeight));
        return new PanelPage(sentence, PanelView.Fit(cloth, area, LabelBorder));
    }

    /// <summary>The finished picture.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="badge">The outcome; may be null.</param>
    /// <param name="panel">Draws the panel.</param>
    /// <param name="key">Its key.</param>
    internal Picture Finish(string title, Badge? badge, Action<SKCanvas> panel, PictureKey key)
    {
        var keyTop = View.Area.Bottom + PanelFrame.BottomRoom + 12;
        return new Picture(Theme.PictureWidth, key.PictureHeight(keyTop), $"{title}: {Sentence}", canvas =>
        {
            Header.Draw(canvas, title, badge, Sentence, Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
            PanelFrame.Draw(canvas, View, panel);
            key.Draw(canvas, keyTop);
        });
    }
}
