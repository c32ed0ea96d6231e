using System.Collections.Frozen;

namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>The machinery of English: which words join, deny, ask or only fill. Nothing of bikes.</summary>
internal static class English
{
    /// <summary>Runs of words with a role of their own, longest first when they are matched.</summary>
    public static readonly FrozenDictionary<string, Role> Phrases = Roles(
        (Role.Past, "used to|use to|in the past|previously|formerly|back then|years ago|last year|last season|last summer|last month|a while back|a while ago|fixed that|sorted that|cured that|got that fixed|got that sorted|that is fixed|that's fixed|thats fixed|that got fixed|now fixed|all fixed|is fixed now|has been fixed|fixed it|cured it|sorted it|sorted the|cured the|originally|at first|has gone after|gone away|went away|has gone now|have gone now|has stopped|is history|has settled|settled down"),
        (Role.Present, "now|nowadays|these days|currently|at the moment|atm|instead it|since then"),
        (Role.Supposed, "what if|in case|what would happen if|what happens if|is it possible|is there a risk|any risk of|is there a danger|is it true|would it|could it|might it|will it|so it does not|so it doesn't|so it doesnt|to stop it|to avoid|to prevent|worried it|afraid it|scared it|worried that|hope it|hoping it|i wonder if|should it|just checking if|would i|how would i know if|not sure if|not sure whether|dont know if|don't know if|no idea if|can not tell if|cant tell if|can't tell if|supposed to be"),
        (Role.Negator, "not|never|nothing|no|without|nor|neither|none|cannot|can not|refuses to|refuse to|refusing to|refused to|fails to|fail to|failing to|failed to|no longer|not any|instead of|rather than|free of|free from|lack of|lacks|lacking|nowt|wont|won't|cant|can't|dont|don't|doesnt|doesn't|isnt|isn't|arent|aren't|wasnt|wasn't|werent|weren't|aint|ain't|didnt|didn't|hasnt|hasn't|havent|haven't|hadnt|hadn't|wouldnt|wouldn't|couldnt|couldn't|shouldnt|shouldn't|doesn|dosnt|dosent|doesent|dosn't|dnt|duznt|wnt|wouldn|isn|nope|nor does|never ever"),
        // Said with 'not' but denying nothing of the bike.
        (Role.Filler, "what a drag|killing me|kills me|cracks me up|burning to know|dying to know|drives me mad|drives me nuts|drives me crazy|driving me mad|driving me nuts|driving me crazy|for love or money|laughs at me|slipped my mind|like hell|like mad|like crazy|or two|or three|or four|or five|or so|or something|or whatever|to be honest|long story short|let me know|not only|not just|not sure why|not sure what|no idea why|no idea what|no idea how|dont know why|don't know why|dont know what|don't know what|dunno why|dunno what|dont understand why|don't understand why|cant figure out why|can't figure out why|cant work out why|can't work out why|no matter|no clue why|no clue what|no doubt|not sure how|why not|dont get why|don't get why|not sure|no idea|dont know|don't know|dunno|any more|anymore|any longer|not always|not long|no problem|no worries|not bad|cant stand|can't stand|not to mention|don't mind|dont mind|never mind|not funny|no joke|no way|not long ago|not good|no good|not right|not happy|not great|not nice|not normal|not sounding right|not ideal|not bothered"),
        (Role.HardBreak, "but|however|although|though|also|plus|as well as|on top of that|another thing|except|yet|and now|and then|and also|only now|whereas|apart from that|other than that|besides|meanwhile|only it|only thing is|only now it|and it|and the|and my|and when|and i"),
        (Role.SoftBreak, "when|if|while|and|until|till|as soon as|after|before|once|because|cause|cos|cuz|coz|so|or|since|unless|whenever|then|even though|even with|even when|even if|as|which|where|every time|everytime|each time|with|than"));

    public static readonly FrozenSet<string> Subjects = Split(
        "it|its|it's|he|she|they|that|thats|that's|this|these|those|there|theres|there's|i|im|i'm|ive|i've|we|you|u|she's|he's|it'll|itll|id|i'd|they're|theyre|what|whats|what's|who");

    public static readonly FrozenSet<string> Fillers = Split(
        "a|an|the|my|me|your|our|his|her|their|is|are|was|were|be|been|being|am|do|does|did|done|has|have|had|having|will|would|should|could|can|may|might|must|shall|of|to|at|for|by|from|into|onto|very|really|quite|pretty|just|so|rather|bit|little|kinda|kind|sort|sorta|like|basically|literally|actually|totally|completely|absolutely|fully|properly|proper|well|please|pls|plz|help|hi|hello|hey|hiya|yo|mate|mates|guys|lads|folks|everyone|anyone|someone|somebody|thanks|thx|ta|cheers|lol|haha|omg|wtf|bloody|damn|darn|flipping|freaking|fucking|fuckin|fkn|frigging|stupid|blooming|blummin|effing|crap|shit|bugger|sodding|ugh|argh|um|erm|er|uh|hmm|oh|yeah|yep|yes|some|any|much|many|more|such|only|ever|else|thing|things|stuff|got|get|gets|getting|gotten|seem|seems|seemed|think|thought|reckon|guess|suppose|maybe|perhaps|probably|possibly|apparently|obviously|anyway|somehow|begin|begins|began|begun|want|wants|wanted|try|tries|trying|tried|let's|lets|because|gonna|wanna|gotta|going|also|both|see|look|looks|looking|say|says|said|told|tell|call|calls|calling|question|question's|anybody|idea|ideas|advice|mine|yours|ill|i'll|&|u|r|ur|n|bro|dude|fella|pal|buddy|everybody|myself|itself|himself|dear|sir|madam|sorry|whatever");

    /// <summary>Words with little meaning of their own that still tell one statement from another: they count for less.</summary>
    public static readonly FrozenSet<string> LightWords = Split(
        "in|out|on|off|up|down|over|back|through|around|under|again|bike|engin|motor|go|come|make|take|put|time|1|2|3|4|5|6|7|8|9|0|ride|feel|clutch|engine|one|two|after|need|work|use|first|last|day|week|new|old|side|then|happen|cycl|machin|good|bad|kit|all|alway|sometim|often|right|ok|fine|same|way|start|how|whi|late|recent|even|most|stop|while|got|long|littl|lot|still|keep|today|too|everytim|after|sinc|problem|issu|troubl|gone|help");

    /// <summary>Short cuts of chat, put right before anything else is looked up.</summary>
    public static readonly FrozenDictionary<string, string> Shorthand = Pairs(
        "wen when|wn when|bak back|bck back|evry every|evrything everything|hav have|hv have|ther there|thier their|thru through|wat what|wot what|dat that|dis this|da the|teh the|hte the|adn and|nd and|n and|w with|wiv with|wif with|bcuz because|becuase because|tho though|altho although|alot lot|jus just|jst just|cud could|wud would|shud should|agen again|agin again|nothin nothing|nuthin nothing|somethin something|evertime everytime|rn now|atm currently|abt about|b4 before|til until|gt get|goin going|comin coming|doin doing|kno know|tmrw tomorrow|tmr tomorrow|yday yesterday|yestarday yesterday|2day today|tday today|suddnly suddenly|sudenly suddenly|suddently suddenly|realy really|rly really|prolly probably|probly probably|dunno dunno|untill until|wher where|wich which|witch which|aswell also|noticable noticeable|stoped stopped|stopd stopped|moovs moves|moov move|smal small|smaler smaller|shure sure|b be|k ok|plz please|pls please|thx thanks|ty thanks|off. off|soo so|everytime everytime|whenver whenever|wenever whenever|havnt haven't|coz because|cos because|an and");

    /// <summary>Said of a noise or a fault: it is not there then.</summary>
    public static readonly FrozenSet<string> Quieting = Split("silenc|silent|quiet|vanish|disappear|ceas|quieten|gone");

    /// <summary>They join, and mean something too.</summary>
    public static readonly FrozenSet<string> MeaningfulBreaks = Split("after|since|every time|everytime|each time|without");

    /// <summary>Words that a term of several words may lose without becoming another term.</summary>
    public static readonly FrozenSet<string> Weightless = Split("a|an|the|my|your|our|its|it|is|are|was|were|be|been|has|have|had|do|does|did|i|we|you|of|to|that|this|me|by|for|when|as|so|and|at|if|while|got|get|gets");

    /// <summary>Verb forms that a stemmer does not bring together.</summary>
    public static readonly FrozenDictionary<string, string> Irregular = Pairs(
        "slipt slip|went go|goes go|came come|took take|taken take|made make|broke break|broken break|bent bend|worn wear|wore wear|stuck stick|felt feel|fell fall|fallen fall|lost lose|rode ride|ridden ride|ran run|held hold|spun spin|snapt snap|tore tear|torn tear|froze freeze|frozen freeze|left leave|stood stand|blew blow|blown blow|shook shake|shaken shake|sat sit|hung hang|burnt burn|burned burn|smelt smell|sprung spring|leapt leap|caught catch|bit bite|bitten bite|drove drive|driven drive|flew fly|hit hit|kicked kick|fitted fit|dropped drop|locked lock|lept leap|thrown throw|threw throw|grown grow|grew grow|shrank shrink|shrunk shrink|ate eat|eaten eat|bought buy|swung swing|bound bind|found find|crept creep|grippy grip|loosen loose|loosened loose|loosening loose|looser loose|tighter tight|tighten tight|tightened tight|tightening tight|heavier heavy|stiffer stiff|harder hard|noisy noise|noisier noise|smelly smell|smokey smoke|smoky smoke|oily oil|wetter wet|hotter hot|colder cold|slower slow|slowly slow|worse bad|squeaky squeak|squeaks squeak|juddery judder|jerky jerk|clunky clunk|knocky knock|rattly rattle|slippy slip|slippery slip|wobbly wobble|floppy flop|dragged drag|smoother smooth|rusty rust|died die|dying die|dead die|feet foot|teeth tooth|longer long|shorter short|higher high|lower low|grinding grind");

    private static FrozenDictionary<string, Role> Roles(params (Role Role, string Words)[] groups) =>
        groups.SelectMany(g => g.Words.Split('|').Select(w => (Words: w, g.Role)))
            .DistinctBy(p => p.Words)
            .ToFrozenDictionary(p => p.Words, p => p.Role);

    private static FrozenSet<string> Split(string words) => words.Split('|').ToFrozenSet();

    private static FrozenDictionary<string, string> Pairs(string pairs) =>
        pairs.Split('|').Select(p => p.Split(' ')).DistinctBy(p => p[0]).ToFrozenDictionary(p => p[0], p => p[1]);
}
