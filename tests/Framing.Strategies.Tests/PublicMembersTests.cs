using System.Reflection;
using Framing.Tests.Shared;

namespace Framing.Strategies.Tests;

public sealed class PublicMembersTests
{
    private const string Accepted = "Framing.Strategies.public.txt";

    [Fact]
    public void FramingStrategies_PublicMembers_AreTheReviewedOnes()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Accepted);
        using var reader = new StreamReader(Assert.IsType<Stream>(stream, exactMatch: false));
        PublicMembers.AssertAccepted(
            typeof(IRotationStrategy).Assembly,
            reader.ReadToEnd(),
            "tests/Framing.Strategies.Tests/Data/" + Accepted
        );
    }
}
