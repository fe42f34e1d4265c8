using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Keys;

/// <summary>The foot of a picture: what its colours and its signs mean.</summary>
/// <param name="signs">The signs it uses.</param>
/// <param name="scale">Its colours; null when they carry no numbers.</param>
internal sealed class PictureKey(IReadOnlyList<KeySign> signs, ClassScale? scale = null)
{
    private const float Left = Theme.Margin;
    private const float Width = Theme.PictureWidth - 2 * Theme.Margin;

    /// <summary>Height of the whole picture when its key begins at a place [px].</summary>
    internal int PictureHeight(float top) =>
        (int)MathF.Ceiling(top + BarHeight + SignKey.Rows(signs, Width) * SignKey.RowHeight + Theme.Margin - 6);

    /// <summary>Draws the key.</summary>
    internal void Draw(SKCanvas canvas, float top)
    {
        if (scale is not null)
        {
            ClassBar.Draw(
                canvas, new SKRect(Left, top, Left + Width, top + ClassBar.Height), scale.Heading, scale.Classes, scale.Borders, scale.First, scale.Last);
        }

        SignKey.Draw(canvas, signs, Left, top + BarHeight, Width);
    }

    private float BarHeight => scale is null ? 0 : ClassBar.Height;
}
