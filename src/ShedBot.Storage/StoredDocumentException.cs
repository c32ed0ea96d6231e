namespace ShedBot.Storage;

/// <summary>A stored document is not what was written, or is written in a way that this version does not know.</summary>
public sealed class StoredDocumentException(string collection, string id, string problem)
    : Exception($"In {collection}, '{id}': {problem}")
{
    public string Collection { get; } = collection;

    public string DocumentId { get; } = id;
}
