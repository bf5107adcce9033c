namespace Framing.Catalogue;

/// <summary>The 88 constellations: the IAU's three letters (list of 1922 and 1930), and name and genitive as search keys write them.</summary>
internal static class ConstellationNames
{
    /// <summary>One text that is read where it lies: a list of strings would be built at every start of the program.</summary>
    private const string All = """
        And,andromeda,andromedae
        Ant,antliae,antliae
        Aps,apus,apodis
        Aqr,aquarius,aquarii
        Aql,aquila,aquilae
        Ara,ara,arae
        Ari,aries,arietis
        Aur,auriga,aurigae
        Boo,bootes,bootis
        Cae,caelum,caeli
        Cam,camelopardalis,camelopardalis
        Cnc,cancer,cancri
        CVn,canesvenatici,canumvenaticorum
        CMa,canismajor,canismajoris
        CMi,canisminor,canisminoris
        Cap,capricornus,capricorni
        Car,carina,carinae
        Cas,cassiopeia,cassiopeiae
        Cen,centaurus,centauri
        Cep,cepheus,cephei
        Cet,cetus,ceti
        Cha,chamaeleon,chamaeleontis
        Cir,circinus,circini
        Col,columba,columbae
        Com,comaberenices,comaeberenices
        CrA,coronaaustralis,coronaeaustralis
        CrB,coronaborealis,coronaeborealis
        Crv,corvus,corvi
        Crt,crater,crateris
        Cru,crux,crucis
        Cyg,cygnus,cygni
        Del,delphinus,delphini
        Dor,dorado,doradus
        Dra,draco,draconis
        Equ,equuleus,equulei
        Eri,eridanus,eridani
        For,fornax,fornacis
        Gem,gemini,geminorum
        Gru,grus,gruis
        Her,hercules,herculis
        Hor,horologium,horologii
        Hya,hydra,hydrae
        Hyi,hydrus,hydri
        Ind,indus,indi
        Lac,lacerta,lacertae
        Leo,leo,leonis
        LMi,leominor,leonisminoris
        Lep,lepus,leporis
        Lib,libra,librae
        Lup,lupus,lupi
        Lyn,lynx,lyncis
        Lyr,lyra,lyrae
        Men,mensa,mensae
        Mic,microscopium,microscopii
        Mon,monoceros,monocerotis
        Mus,musca,muscae
        Nor,norma,normae
        Oct,octans,octantis
        Oph,ophiuchus,ophiuchi
        Ori,orion,orionis
        Pav,pavo,pavonis
        Peg,pegasus,pegasi
        Per,perseus,persei
        Phe,phoenix,phoenicis
        Pic,pictor,pictoris
        Psc,pisces,piscium
        PsA,piscisaustrinus,piscisaustrini
        Pup,puppis,puppis
        Pyx,pyxis,pyxidis
        Ret,reticulum,reticuli
        Sge,sagitta,sagittae
        Sgr,sagittarius,sagittarii
        Sco,scorpius,scorpii
        Scl,sculptor,sculptoris
        Sct,scutum,scuti
        Ser,serpens,serpentis
        Sex,sextans,sextantis
        Tau,taurus,tauri
        Tel,telescopium,telescopii
        Tri,triangulum,trianguli
        TrA,triangulumaustrale,trianguliaustralis
        Tuc,tucana,tucanae
        UMa,ursamajor,ursaemajoris
        UMi,ursaminor,ursaeminoris
        Vel,vela,velorum
        Vir,virgo,virginis
        Vol,volans,volantis
        Vul,vulpecula,vulpeculae
        """;

    /// <summary>The three letters of a constellation by its line in the list, 1 to 88; null for 0.</summary>
    public static string? Abbreviation(int number)
    {
        var rest = All.AsSpan();
        for (var line = 1; line < number; line++)
        {
            rest = rest[(rest.IndexOf('\n') + 1)..];
        }

        return number == 0 ? null : rest[..3].ToString();
    }

    /// <summary>Cuts a constellation from the end of a key: "alphalyrae" leaves "alpha" and "lyr".</summary>
    /// <param name="key">Small letters and digits without spaces.</param>
    /// <param name="rest">What stands in front of the longest form (letters, name or genitive) that fits and leaves the name of a star.</param>
    /// <param name="letters">The three letters, small.</param>
    /// <returns>True if there is one.</returns>
    public static bool TryCut(ReadOnlySpan<char> key, out string rest, out string letters)
    {
        var longest = 0;
        rest = letters = string.Empty;
        ReadOnlySpan<char> line = default;
        for (var list = All.AsSpan(); list.Length > 0; )
        {
            var end = list.IndexOfAny(',', '\n');
            var form = end < 0 ? list : list[..end];
            if (line.IsEmpty)
            {
                line = list[..3];
            }

            if (
                form.Length > longest
                && key.EndsWith(form, StringComparison.OrdinalIgnoreCase)
                && StarLetters.TryRead(key[..^form.Length], out var star)
            )
            {
                (longest, rest) = (form.Length, star);
                letters = line.ToString().ToLowerInvariant();
            }

            if (end < 0)
            {
                break;
            }

            line = list[end] == '\n' ? default : line;
            list = list[(end + 1)..];
        }

        return longest > 0;
    }
}
