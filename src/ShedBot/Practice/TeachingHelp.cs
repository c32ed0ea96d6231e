using ShedBot.Coaching.Cards;

namespace ShedBot.Practice;

/// <summary>The words with which the practice club's rules are looked after.</summary>
internal static class TeachingHelp
{
    public static Card Card { get; } = new(
        "Looking after the rules",
        [
            new TextBlock("You are a moderator of the practice club here. Begin with rules, and go on by the numbers; or type:"),
            new DrawingBlock("""
                rules                       what stands, and what waits
                rules new                   write something; rules new cause, rules new check,
                                            rules new repair, how to, cover, fact, service
                rules mend check screws     a wording; also repair, cause, trouble, finding,
                                            answer, cover, fact, service
                rules strength              how strong, how common
                rules phrase                what riders say
                rules retire, restore       out of use, and back
                rules waiting               what waits; go on with what you began
                rules try                   beside the rules as they are
                rules hand in, publish      of what you looked at last; or rules publish P3
                rules refuse BECAUSE ...    turn it down, with the reason
                rules put away              your own, unpublished
                rules editions, back 3      what was published; take back to one of them
                rules reports               what closed cases tell; rules report fixes, guesses,
                                            questions, unanswered, chances (or chances light)
                rules words                 what was not understood, and what it means
                rules learn                 what mended cases could teach, with the numbers
                rules log, log all          who did what, when
                rules file out FILE         the club's own rules as a file
                rules file in FILE          the same, changed by hand
                rules settings              rules two people on; rules learning off, proposals,
                                            automatic; learning at most 3, learning share 5 %
                tip: WORDS, tips            pass on what you know; what others passed on
                """.ReplaceLineEndings("\n")),
            new TextBlock("While a sheet asks: the number of an answer, or your own words; skip, back, all, stop. Everything is kept as it comes."),
        ],
        []);
}
