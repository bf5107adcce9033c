using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Framing.Fits;
using Framing.Imaging;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Looks at one file of a folder: what it was taken for, where it looks, how good it is.</summary>
internal static class ShotReader
{
    /// <summary>Looks.</summary>
    /// <param name="path">The file.</param>
    /// <param name="rig">The plan's rig, for the scale of frames that carry no solution.</param>
    /// <param name="near">Where the plan's panels are.</param>
    /// <returns>What it is; a file that cannot be read is an answer, too.</returns>
    public static ShotFrame Look(string path, Rig rig, SkyDirection near)
    {
        PictureFacts facts;
        Picture picture;
        try
        {
            facts = PictureFile.Inspect(path);
            picture = PictureFile.Read(path, int.MaxValue);
        }
        catch (UnreadableFileException broken)
        {
            return new()
            {
                File = path,
                Key = "file:" + path,
                Kind = ShotKind.Light,
                Fault = "unreadable: " + Clause(broken.Message, path),
            };
        }

        var shot = new ShotFrame
        {
            File = path,
            Key = KeyOf(picture, facts.Rig.Start),
            Kind = KindOf(facts.Rig.Kind),
            At = facts.Rig.Start?.UtcDateTime,
            ExposureSeconds = facts.Rig.ExposureSeconds,
            Filter = facts.Rig.Filter,
        };
        return shot.Kind == ShotKind.Light ? Measured(shot, path, facts, picture, rig, near) : shot;
    }

    private static ShotFrame Measured(
        ShotFrame shot,
        string path,
        PictureFacts facts,
        Picture picture,
        Rig rig,
        SkyDirection near
    )
    {
        var found = StarFinder.Find(picture);
        shot = shot with
        {
            Stars = found.Stars.Count,
            Background = found.Background,
            Elongation = found.TypicalElongation,
            Fault = found.Complaint,
        };
        if (shot.Fault is not null && facts.Sky is null)
        {
            return shot;
        }

        var solved = SkyFinder.Find(
            path,
            facts,
            FrameSight.ScaleOf(facts, rig),
            near,
            out var reason,
            found
        );
        return solved is not { Facts: var sky }
            ? shot with
            {
                Fault = reason,
            }
            : shot with
            {
                Pose = new CameraPose(sky.Centre, sky.DisplayedPositionAngle),
                Field = new(facts.Width * sky.ScaleX.Radians, facts.Height * sky.ScaleY.Radians),
                Mirrored = sky.DisplayedMirrored,
            };
    }

    /// <summary>By its samples and its date: a renamed file, or one with other words in its header, is the same frame.</summary>
    private static string KeyOf(Picture picture, DateTimeOffset? start)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(
            MemoryMarshal.AsBytes<long>([
                picture.Width,
                picture.Height,
                picture.Planes,
                start?.UtcTicks ?? 0L,
            ])
        );
        for (var plane = 0; plane < picture.Planes; plane++)
        {
            hash.AppendData(MemoryMarshal.AsBytes(picture.Plane(plane)));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset().AsSpan(0, 16));
    }

    /// <summary>As the cameras write it: "Light Frame", "FLAT", "master dark" … (common practice); what says nothing is the sky.</summary>
    private static ShotKind KindOf(string? written)
    {
        var text = (written ?? string.Empty).ToUpper(CultureInfo.InvariantCulture);
        return text.Contains("FLAT", StringComparison.Ordinal) ? ShotKind.Flat
            : text.Contains("DARK", StringComparison.Ordinal) ? ShotKind.Dark
            : text.Contains("BIAS", StringComparison.Ordinal)
            || text.Contains("OFFSET", StringComparison.Ordinal)
            || text.Contains("ZERO", StringComparison.Ordinal)
                ? ShotKind.Bias
            : ShotKind.Light;
    }

    /// <summary>A message that begins with the file's own name, without it and without its full stop.</summary>
    private static string Clause(string message, string path)
    {
        var text = message.ReplaceLineEndings(" ").TrimEnd('.');
        var name = path + ": ";
        return text.StartsWith(name, StringComparison.Ordinal) ? text[name.Length..] : text;
    }
}
