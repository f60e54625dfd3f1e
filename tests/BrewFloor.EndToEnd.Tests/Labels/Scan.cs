using BigGustave;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace BrewFloor.EndToEnd.Tests.Labels;

/// <summary>What a phone's camera makes of a picture; null: nothing.</summary>
internal static class Scan
{
    public static string? Read(byte[] picture)
    {
        var png = Png.Open(picture);
        var grey = new byte[png.Width * png.Height];
        for (var y = 0; y < png.Height; y++)
        {
            for (var x = 0; x < png.Width; x++)
            {
                var pixel = png.GetPixel(x, y);
                grey[(y * png.Width) + x] = (byte)((pixel.R + pixel.G + pixel.B) / 3);
            }
        }

        var light = new RGBLuminanceSource(grey, png.Width, png.Height, RGBLuminanceSource.BitmapFormat.Gray8);
        // As a camera does: what one way of telling dark from light misses, another finds.
        Binarizer[] ways = [new GlobalHistogramBinarizer(light), new HybridBinarizer(light)];
        return ways.Select(way =>
                new QRCodeReader().decode(
                    new BinaryBitmap(way),
                    new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true }
                )
            )
            .FirstOrDefault(result => result is not null)
            ?.Text;
    }
}
