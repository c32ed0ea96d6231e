using Lucene.Net.Tartarus.Snowball.Ext;

namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>Brings the forms of a word together: slips, slipping, slipped. Not safe to share between threads; make one per message.</summary>
internal sealed class Stems
{
    private readonly EnglishStemmer stemmer = new();

    public string Of(string word)
    {
        if (English.Irregular.TryGetValue(word, out var plain))
            word = plain;
        // The stemmer's buffer is meant for words; longer runs of letters are none.
        if (word.Length is < 3 or > 40)
            return word;
        stemmer.SetCurrent(word);
        stemmer.Stem();
        return stemmer.Current;
    }
}
