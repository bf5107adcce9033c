using System.Reflection;
using Framing.Tests.Shared;

namespace Framing.Sky.Tests;

public sealed class PublicMembersTests
{
    private const string Accepted = "Framing.Sky.public.txt";

    [Fact]
    public void FramingSky_PublicMembers_AreTheReviewedOnes()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Accepted);
        using var reader = new StreamReader(Assert.IsType<Stream>(stream, exactMatch: false));
        PublicMembers.AssertAccepted(
            typeof(SkyDirection).Assembly,
            reader.ReadToEnd(),
            "tests/Framing.Sky.Tests/Data/" + Accepted
        );
    }
}
