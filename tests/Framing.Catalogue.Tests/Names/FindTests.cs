namespace Framing.Catalogue.Tests.Names;

public sealed class FindTests
{
    private static readonly ObjectCatalogue Objects = ObjectCatalogue.Embedded;

    [Theory]
    [InlineData("ic1805", "IC 1805")]
    [InlineData("heart nebula", "IC 1805")]
    [InlineData("heartnebula", "IC 1805")]
    [InlineData("The Heart", "IC 1805")]
    [InlineData("sh2 129", "Sh2-129")]
    [InlineData("sh2-129", "Sh2-129")]
    [InlineData("NGC0281", "NGC 281")]
    [InlineData("pac man nebula", "NGC 281")]
    [InlineData("m31", "M 31")]
    [InlineData("andromeda", "M 31")]
    [InlineData("caldwell 20", "NGC 7000")]
    [InlineData("c20", "NGC 7000")]
    [InlineData("Barnard 33", "B 33")]
    [InlineData("horse head nebula", "B 33")]
    [InlineData("LBN 552", "LBN 552")]
    [InlineData("the veil", "Cygnus Loop")]
    [InlineData("eastern veil", "NGC 6992")]
    [InlineData("swan nebula", "M 17")]
    [InlineData("praesepe", "M 44")]
    [InlineData("heart and soul", "IC 1805+IC 1848")]
    [InlineData("M8 & M20", "M 8+M 20")]
    [InlineData("double cluster", "NGC 869+NGC 884")]
    [InlineData("h Persei", "NGC 869")]
    [InlineData("47 Tuc", "NGC 104")]
    [InlineData("omega centauri", "NGC 5139")]
    [InlineData("30 Doradus", "NGC 2070")]
    [InlineData("barnard's loop", "Sh2-276")]
    [InlineData("barnards loop", "Sh2-276")]
    [InlineData("Barnard loop", "Sh2-276")]
    [InlineData("abell 31", "Sh2-290")]
    [InlineData("abell 426", "Perseus Cluster")]
    [InlineData("lmc", "LMC")]
    [InlineData("snr g180.0-1.7", "Sh2-240")]
    [InlineData("orion nebulae", "M 42")]
    [InlineData("Vega", "HIP 91262")]
    [InlineData("alpha Lyrae", "HIP 91262")]
    [InlineData("α Lyr", "HIP 91262")]
    [InlineData("alf lyr", "HIP 91262")]
    [InlineData("3 Lyrae", "HIP 91262")]
    [InlineData("HIP 91262", "HIP 91262")]
    [InlineData("hip091262", "HIP 91262")]
    [InlineData("61 Cyg", "HIP 104214")]
    [InlineData("61 Cygni B", "HIP 104217")]
    [InlineData("alpha Centauri", "HIP 71683")]
    [InlineData("alpha cen b", "HIP 71681")]
    [InlineData("alpha Canis Majoris", "HIP 32349")]
    [InlineData("Belenos", "HIP 6643")]
    [InlineData("l Car", "HIP 47854")]
    [InlineData("L Car", "HIP 50847")]
    public void Find_WaysOfWriting_LandOnTheOneThing(string words, string id)
    {
        var result = Objects.Find(words);
        Assert.Equal(id, result.Entry?.Id);
        Assert.True(result.IsFound);
        Assert.False(result.IsAmbiguous);
        Assert.Empty(result.Suggestions);
        Assert.Equal(words, result.Words);
    }

    [Theory]
    [InlineData("M 20", "Mel 20")]
    [InlineData("M 1", "M1-67")]
    [InlineData("C 19", "Cr 19")]
    [InlineData("C 14", "Ced 214")]
    [InlineData("B 33", "vdB 33")]
    [InlineData("LBN 552", "LDN 552")]
    [InlineData("Sh2-1", "Sh2-11")]
    [InlineData("IC 10", "NGC 10")]
    [InlineData("SNR G078.2+02.1", "SNR G078.2-02.1")]
    public void Find_LookalikeDesignations_AreNeverOneThing(string one, string other)
    {
        var first = Objects.Find(one).Entry;
        Assert.NotNull(first);
        Assert.NotEqual(first.Id, Objects.Find(other).Entry?.Id, StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("hart nebula", "Heart Nebula")]
    [InlineData("haert nebula", "Heart Nebula")]
    [InlineData("pelikan", "Pelican Nebula")]
    [InlineData("rozette nebula", "Rosette Nebula")]
    [InlineData("crescent nebulla", "Crescent Nebula")]
    [InlineData("heart galaxy", "Heart Nebula")]
    [InlineData("soul neb", "Soul Nebula")]
    [InlineData("witch's heda", "Witch Head Nebula")]
    [InlineData("Vegga", "Vega")]
    [InlineData("alpha lyx", "alpha Lyn")]
    [InlineData("62 Cyk", "62 Cyg")]
    [InlineData("vega star", "Vega")]
    [InlineData("IC 18005", "IC 1805")]
    [InlineData("ngc 282", "NGC 281")]
    [InlineData("M 111", "M 110")]
    [InlineData("Sh2-314", "Sh2-313")]
    public void Find_NearMiss_SuggestsWhatWasMeantFirst(string words, string first)
    {
        var result = Objects.Find(words);
        Assert.False(result.IsFound);
        Assert.False(result.IsAmbiguous);
        Assert.Equal(3, result.Suggestions.Count);
        Assert.Equal(first, result.Suggestions[0].Words);
        AssertEachIsFound(result);
    }

    [Theory]
    [InlineData("spindle galaxy", "NGC 3115", "M 102")]
    [InlineData("owl", "NGC 457", "M 97")]
    [InlineData("cocoon", "IC 5146", "NGC 4490")]
    [InlineData("chi Ori", "HIP 27913", "HIP 28716")]
    public void Find_NameOfSeveralThings_NamesThem(string words, string one, string other)
    {
        var result = Objects.Find(words);
        Assert.False(result.IsFound);
        Assert.True(result.IsAmbiguous);
        Assert.Equal(
            [one, other],
            result.Suggestions.Select(s => s.Entry.Id),
            StringComparer.Ordinal
        );
        AssertEachIsFound(result);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("?!")]
    [InlineData("HIP 999999")]
    [InlineData("HIP 99999999999")]
    public void Find_NothingToGoBy_IsNotFound(string words) =>
        Assert.False(Objects.Find(words).IsFound);

    [Theory]
    [InlineData("qwertzuiop")]
    [InlineData("x")]
    [InlineData("nebula")]
    [InlineData("12345678901234567890")]
    public void Find_Nonsense_StillSuggestsThreeThatAreFound(string words)
    {
        var result = Objects.Find(words);
        Assert.False(result.IsFound);
        Assert.Equal(3, result.Suggestions.Count);
        AssertEachIsFound(result);
    }

    [Fact]
    public void Find_EveryNameOfEveryStar_IsThatStarOrSaysWhyNot()
    {
        int found = 0,
            ambiguous = 0,
            taken = 0;
        foreach (var row in CsvTable.Read("star-names.csv"))
        {
            var name = StarCatalogue.NameOf(
                int.Parse(row["hip"], System.Globalization.CultureInfo.InvariantCulture)
            );
            foreach (var words in name!.All)
            {
                var result = Objects.Find(words);
                if (result.Entry?.Id == FormattableString.Invariant($"HIP {name.Hipparcos}"))
                {
                    found++;
                }
                else if (result.IsAmbiguous)
                {
                    ambiguous++;
                }
                else
                {
                    // A brighter star next to it, or a cluster, has the same name.
                    Assert.NotNull(result.Entry);
                    taken++;
                }
            }
        }

        // 3,550 numbers, 567 proper names, letters and Flamsteed numbers with a constellation: all asked for.
        Assert.True(found > 8_500, FormattableString.Invariant($"{found} found"));
        Assert.True(taken < 60, FormattableString.Invariant($"{taken} taken"));
        Assert.True(ambiguous < 20, FormattableString.Invariant($"{ambiguous} ambiguous"));
    }

    private static void AssertEachIsFound(FindResult result)
    {
        foreach (var suggestion in result.Suggestions)
        {
            Assert.Equal(suggestion.Entry.Id, Objects.Find(suggestion.Words).Entry?.Id);
        }

        Assert.Equal(
            result.Suggestions.Count,
            result.Suggestions.Select(s => s.Entry.Id).Distinct(StringComparer.Ordinal).Count()
        );
    }
}
