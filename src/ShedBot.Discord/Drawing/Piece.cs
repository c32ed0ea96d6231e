using System.Text;

namespace ShedBot.Discord.Drawing;

/// <summary>A part of a card that stays whole in one message.</summary>
/// <param name="Block">Pieces of one block share it; they are shown as one text where they meet.</param>
/// <param name="Text">In the platform's markup; for a picture what it falls back to, which also counts for its size.</param>
/// <param name="Heads">Not to be left as the last of a message.</param>
internal sealed record Piece(int Block, string Text, bool Heads = false, Picture? Picture = null)
{
    public int Bytes => Encoding.UTF8.GetByteCount(Text);
}

/// <param name="Alt">What it shows, for those who do not see it.</param>
internal sealed record Picture(ReadOnlyMemory<byte> Png, string Alt);
