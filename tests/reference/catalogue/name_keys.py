"""The search key of a name: what is left when case, spaces, punctuation, leading zeros and spelling habits are taken away.

The program makes the same key from what a user types (NameKey.cs); a test holds both against each other.

    "NGC0281" -> ngc281      "Sh 2 - 129" -> sh2-129     "the Heart Nebulae" -> heartnebula
    "alpha Lyrae" -> alphalyr     "α² CVn" -> alpha2cvn     "SNR G184.6-05.8" -> snrg184-6-5-8
"""
import re
import unicodedata

GREEK = dict(zip('αβγδεζηθικλμνξοπρστυφχψω',
                 'alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi omicron pi rho sigma tau '
                 'upsilon phi chi psi omega'.split()))
GREEK.update({'ς': 'sigma', 'ϑ': 'theta', 'ϕ': 'phi', 'ϵ': 'epsilon'})
GREEK_SHORT = {'alf': 'alpha', 'alp': 'alpha', 'bet': 'beta', 'gam': 'gamma', 'del': 'delta', 'eps': 'epsilon', 'zet': 'zeta',
               'iot': 'iota', 'kap': 'kappa', 'lam': 'lambda', 'ksi': 'xi', 'omi': 'omicron', 'sig': 'sigma',
               'ups': 'upsilon', 'ome': 'omega'}
LETTERS = sorted(set(GREEK.values()) | set(GREEK_SHORT), key=len, reverse=True)

# Catalogue names written out; they count only in front of a number.
CATALOGUES = {'messier': 'm', 'caldwell': 'c', 'barnard': 'b', 'melotte': 'mel', 'collinder': 'cr', 'cederblad': 'ced',
              'palomar': 'pal', 'trumpler': 'tr', 'ruprecht': 'ru', 'abell': 'a', 'hickson': 'hcg', 'westerhout': 'w',
              'hipparcos': 'hip', 'sharpless': 'sh'}
SINGULAR = {'nebulae': 'nebula', 'nebulas': 'nebula', 'galaxies': 'galaxy', 'clusters': 'cluster'}

# IAU abbreviation, name, genitive (the list of 1922/1930).
CONSTELLATIONS = [line.split(',') for line in """
And,andromeda,andromedae|Ant,antliae,antliae|Aps,apus,apodis|Aqr,aquarius,aquarii|Aql,aquila,aquilae|Ara,ara,arae
Ari,aries,arietis|Aur,auriga,aurigae|Boo,bootes,bootis|Cae,caelum,caeli|Cam,camelopardalis,camelopardalis
Cnc,cancer,cancri|CVn,canesvenatici,canumvenaticorum|CMa,canismajor,canismajoris|CMi,canisminor,canisminoris
Cap,capricornus,capricorni|Car,carina,carinae|Cas,cassiopeia,cassiopeiae|Cen,centaurus,centauri|Cep,cepheus,cephei
Cet,cetus,ceti|Cha,chamaeleon,chamaeleontis|Cir,circinus,circini|Col,columba,columbae|Com,comaberenices,comaeberenices
CrA,coronaaustralis,coronaeaustralis|CrB,coronaborealis,coronaeborealis|Crv,corvus,corvi|Crt,crater,crateris
Cru,crux,crucis|Cyg,cygnus,cygni|Del,delphinus,delphini|Dor,dorado,doradus|Dra,draco,draconis|Equ,equuleus,equulei
Eri,eridanus,eridani|For,fornax,fornacis|Gem,gemini,geminorum|Gru,grus,gruis|Her,hercules,herculis
Hor,horologium,horologii|Hya,hydra,hydrae|Hyi,hydrus,hydri|Ind,indus,indi|Lac,lacerta,lacertae|Leo,leo,leonis
LMi,leominor,leonisminoris|Lep,lepus,leporis|Lib,libra,librae|Lup,lupus,lupi|Lyn,lynx,lyncis|Lyr,lyra,lyrae
Men,mensa,mensae|Mic,microscopium,microscopii|Mon,monoceros,monocerotis|Mus,musca,muscae|Nor,norma,normae
Oct,octans,octantis|Oph,ophiuchus,ophiuchi|Ori,orion,orionis|Pav,pavo,pavonis|Peg,pegasus,pegasi|Per,perseus,persei
Phe,phoenix,phoenicis|Pic,pictor,pictoris|Psc,pisces,piscium|PsA,piscisaustrinus,piscisaustrini|Pup,puppis,puppis
Pyx,pyxis,pyxidis|Ret,reticulum,reticuli|Sge,sagitta,sagittae|Sgr,sagittarius,sagittarii|Sco,scorpius,scorpii
Scl,sculptor,sculptoris|Sct,scutum,scuti|Ser,serpens,serpentis|Sex,sextans,sextantis|Tau,taurus,tauri
Tel,telescopium,telescopii|Tri,triangulum,trianguli|TrA,triangulumaustrale,trianguliaustralis|Tuc,tucana,tucanae
UMa,ursamajor,ursaemajoris|UMi,ursaminor,ursaeminoris|Vel,vela,velorum|Vir,virgo,virginis|Vol,volans,volantis
Vul,vulpecula,vulpeculae
""".strip().replace('\n', '|').split('|')]
# every form, longest first
FORMS = sorted({(form, c[0].lower()) for c in CONSTELLATIONS for form in (c[0].lower(), c[1], c[2])},
               key=lambda f: (-len(f[0]), f[0]))


def fold(text):
    """Lower case without accents or apostrophes; Greek letters written out; raised digits as digits."""
    out = []
    for ch in text:
        if ch.lower() in GREEK:
            out.append(' ' + GREEK[ch.lower()] + ' ')
        elif ch == '&':
            out.append(' and ')
        elif ch in "'`’‘ʼ´":
            continue
        else:
            for c in unicodedata.normalize('NFKD', ch).lower():
                if not unicodedata.combining(c):
                    out.append(c)
    return ''.join(out)


def tokens(text):
    """Runs of letters and runs of digits (without leading zeros); a plus between two digits is kept."""
    raw = re.findall(r'[a-z]+|[0-9]+|(?<=[0-9])\+(?=[0-9])', fold(text))
    return [t.lstrip('0') or '0' if t[0].isdigit() else t for t in raw]


def number(token):
    return token[0].isdigit()


def words(text):
    """Tokens with the spelling habits evened out."""
    t = tokens(text)
    if len(t) > 1 and t[0] == 'the':
        t = t[1:]
    out, i = [], 0
    while i < len(t):
        more = len(t) - i
        if t[i:i + 3] == ['van', 'den', 'bergh'] and more > 3 and number(t[i + 3]):
            out.append('vdb')
            i += 3
            continue
        word = t[i]
        if more > 1 and number(t[i + 1]):
            word = CATALOGUES.get(word, word)
            if word == 'sh':
                # "Sh 2-129", "Sh2-129", "Sharpless 129" and "Sh 129" are one; "Sh2" and a number belong together
                if more > 2 and t[i + 1] == '2' and number(t[i + 2]):
                    i += 1
                elif len(t[i + 1]) > 1 and t[i + 1][0] == '2' and int(t[i + 1]) > 313:
                    t[i + 1] = t[i + 1][1:].lstrip('0') or '0'      # "Sh2129": the list ends at 313
                word = 'sh2'
        elif word == 'and' and out and number(out[-1]) and more > 1:
            i += 1
            continue
        out.append(SINGULAR.get(word, word))
        i += 1
    return out


def glue(parts):
    """Words run together; only two numbers stay apart."""
    out = ''
    for p in parts:
        if out and out[-1].isdigit() and p[0].isdigit():
            out += '-'
        out += p
    return out


def star_key(glued):
    """'alphalyrae' -> 'alphalyr', '61cygni' -> '61cyg'; None if it does not read like a letter or number in a constellation."""
    for component in ('', glued[-1:]):
        if component and component not in 'abcd':
            break
        body = glued[:len(glued) - len(component)]
        for form, short in FORMS:
            if body.endswith(form):
                rest = star_part(body[:len(body) - len(form)])
                if rest:
                    return rest + short + component
    return None


def star_part(rest):
    """The letter or number of a star: '3', 'alpha', 'alpha2', 'b3', '3alpha' (the letter wins)."""
    m = re.fullmatch(r'([0-9]*)-?([a-z]*)([0-9]*)', rest)
    if not m or not rest:
        return None
    flamsteed, letter, index = m.groups()
    if not letter:
        return flamsteed if not index else None
    if letter in GREEK_SHORT:
        letter = GREEK_SHORT[letter]
    elif len(letter) > 1 and letter not in GREEK.values():
        return None
    return letter + index


def key(text):
    glued = glue(words(text))
    return star_key(glued) or glued


def main():
    """A table of names and their keys for the test that holds the program's rules against these."""
    import csv
    import os
    import sys
    here = os.path.dirname(os.path.abspath(__file__))

    def read(name):
        with open(os.path.join(here, name), encoding='utf-8', newline='') as f:
            return list(csv.DictReader(line for line in f if not line.startswith('#')))

    texts = []
    for i, row in enumerate(read('deep-sky.csv')):
        texts += [row['name']] if row['name'] else []
        texts += [row['id'], *row['other_ids'].split('|')] if i % 9 == 0 else []
    texts += [row['name'] for row in read('other-names.csv')]
    for i, row in enumerate(read('star-names.csv')):
        texts += [row['proper_name']] if row['proper_name'] else []
        if row['constellation'] and i % 7 == 0:
            texts += [row[k] + ' ' + row['constellation'] for k in ('bayer', 'bayer_letter', 'flamsteed') if row[k]]
    # every form of every constellation, and ways of writing that people use
    texts += ['alf %s' % form for form, _ in FORMS] + ['61 %s a' % form for form, _ in FORMS]
    texts += ['NGC0281', 'sh2 129', 'Sh 2 - 129', 'Sh2129', 'sharpless 2-001', 'SH 101', 'the Veil', 'M 8 & M 20', 'm8 and m20',
              'van den Bergh 142', 'Caldwell020', 'PK 164+31.1', 'SNR G006.4-00.1', 'α² CVn', 'Β Orionis', '3 alpha Lyr', 'HIP 091262',
              'm  31', 'M-31', 'Be\u0301le\u0301nos', "Barnard’s Loop", 'and', 'the', 'h & chi Persei', 'ς Oct', '20 and 21', 'b³ Cyg']
    out = csv.writer(sys.stdout, lineterminator='\n')
    out.writerow(['text', 'key'])
    out.writerows((t, key(t)) for t in dict.fromkeys(t for t in texts if t))


if __name__ == '__main__':
    main()
