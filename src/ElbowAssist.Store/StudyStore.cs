using System.Globalization;
using System.Security.Cryptography;
using ElbowAssist.Store.Database;
using ElbowAssist.Store.Entries;
using Microsoft.Data.Sqlite;

namespace ElbowAssist.Store;

/// <summary>
/// Studies with their films and everything that happened to them, in one SQLite file. Entries are added, never changed;
/// what a method has returned from is on the disk. Thread-safe; one process per file.
/// </summary>
public sealed class StudyStore : IDisposable
{
    private readonly SqliteConnection connection;
    private readonly TimeProvider clock;
    private readonly Lock gate = new();

    private StudyStore(SqliteConnection connection, TimeProvider clock) => (this.connection, this.clock) = (connection, clock);

    /// <summary>Opens the store in a file, made if it is not there.</summary>
    /// <exception cref="StoreException">The file is no store, of a later version, or cannot be written.</exception>
    public static StudyStore Open(string path, TimeProvider? clock = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var opened = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        try
        {
            if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder)
            {
                Directory.CreateDirectory(folder);
            }

            opened.Open();
            // FULL: an entry is on the disk before it is acknowledged. secure_delete: what is deleted is overwritten.
            Execute(opened, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON; PRAGMA busy_timeout = 5000");
            Migrations.Run(opened);
            return new StudyStore(opened, clock ?? TimeProvider.System);
        }
        catch (Exception e) when (e is SqliteException or IOException or UnauthorizedAccessException)
        {
            opened.Dispose();
            throw new StoreException("The store cannot be opened; check that its folder may be written and that the file is a store of this program.", e);
        }
        catch
        {
            opened.Dispose();
            throw;
        }
    }

    /// <summary>Begins a study.</summary>
    /// <param name="title">Title.</param>
    /// <param name="origin">Where its films come from.</param>
    /// <param name="source">What a later arrival is recognised by, or null.</param>
    public StoredStudy Create(string title, string origin, string? source = null)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(origin);
        var study = new StoredStudy(RandomNumberGenerator.GetHexString(16, lowercase: true), title, origin, clock.GetUtcNow(), [], source);
        Write("INSERT INTO studies (id, title, origin, created_at, source) VALUES ($id, $title, $origin, $at, $source)",
            ("$id", study.Id), ("$title", title), ("$origin", origin), ("$at", Text(study.CreatedAt)), ("$source", source));
        return study;
    }

    /// <summary>The study of a source, begun if there is none yet.</summary>
    /// <param name="source">What it is recognised by.</param>
    /// <param name="title">Title of a new one.</param>
    /// <param name="origin">Where the films of a new one come from.</param>
    public StoredStudy FindOrCreate(string source, string title, string origin)
    {
        ArgumentNullException.ThrowIfNull(source);
        lock (gate)
        {
            // Another process may hold the store too: what is looked up must still hold when it is written.
            using var transaction = Begin();
            var study = FindBySource(source) ?? Create(title, origin, source);
            Commit(transaction);
            return study;
        }
    }

    /// <summary>The latest study of a source, or null.</summary>
    public StoredStudy? FindBySource(string source) =>
        Query("SELECT id FROM studies WHERE source = $source ORDER BY rowid DESC LIMIT 1", r => r.GetString(0), ("$source", source)) is [var id] ? Find(id) : null;

    /// <summary>All studies, the newest first.</summary>
    public IReadOnlyList<StoredStudy> List() =>
        [.. Query("SELECT id FROM studies ORDER BY created_at DESC, rowid DESC", r => r.GetString(0)).Select(Find).OfType<StoredStudy>()];

    /// <summary>A short text that changes whenever a study, a film or an entry comes or goes.</summary>
    public string Stamp() => Query(
        "SELECT (SELECT count(*) || '.' || coalesce(max(rowid), 0) FROM studies) || '-' || (SELECT count(*) || '.' || coalesce(max(rowid), 0) FROM films) || '-' || (SELECT coalesce(max(number), 0) FROM entries)",
        r => r.GetString(0))[0];

    /// <summary>A study, or null.</summary>
    public StoredStudy? Find(string studyId)
    {
        var films = Query("SELECT id, name, sha256, stated, placements FROM films WHERE study = $study ORDER BY rowid",
            r => new StoredFilm(r.GetString(0), r.GetString(1), r.GetString(2), Nullable(r, 3), Nullable(r, 4)), ("$study", studyId));
        return Query("SELECT title, origin, created_at, source FROM studies WHERE id = $study",
            r => new StoredStudy(studyId, r.GetString(0), r.GetString(1), Time(r.GetString(2)), films, Nullable(r, 3)), ("$study", studyId)).FirstOrDefault();
    }

    /// <summary>Adds a film. A film whose content the study holds already is not added again: the one held is returned.</summary>
    /// <param name="studyId">Study.</param>
    /// <param name="name">File name without a folder.</param>
    /// <param name="content">The file.</param>
    /// <param name="stated">What is said of it, as a sidecar; or null.</param>
    /// <param name="placements">Landmarks laid beforehand, as COCO keypoints; or null.</param>
    /// <exception cref="StoreException">There is no such study.</exception>
    public StoredFilm AddFilm(string studyId, string name, byte[] content, string? stated = null, string? placements = null)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(content);
        var sha = Convert.ToHexStringLower(SHA256.HashData(content));
        lock (gate)
        {
            // Two processes that add to one study must not number their films alike.
            using var transaction = Begin();
            var study = Find(studyId) ?? throw new StoreException("There is no such study.");
            if (study.Films.FirstOrDefault(f => f.Sha256 == sha) is { } held)
            {
                return held;
            }

            var film = new StoredFilm(string.Create(CultureInfo.InvariantCulture, $"film-{study.Films.Count + 1}"), name, sha, stated, placements);
            Write("INSERT INTO films (study, id, name, sha256, content, stated, placements) VALUES ($study, $id, $name, $sha, $content, $stated, $placements)",
                ("$study", studyId), ("$id", film.Id), ("$name", name), ("$sha", sha), ("$content", content), ("$stated", stated), ("$placements", placements));
            Commit(transaction);
            return film;
        }
    }

    /// <summary>The file of a film, or null.</summary>
    public byte[]? Content(string studyId, string filmId) =>
        Query("SELECT content FROM films WHERE study = $study AND id = $id", r => (byte[])r.GetValue(0), ("$study", studyId), ("$id", filmId)).FirstOrDefault();

    /// <summary>Keeps what happened.</summary>
    /// <param name="studyId">Study.</param>
    /// <param name="who">The reader's own word for themselves, or empty.</param>
    /// <param name="events">Kept together or not at all.</param>
    /// <returns>The entries as kept.</returns>
    /// <exception cref="StoreException">There is no such study, or the disk is full.</exception>
    public IReadOnlyList<StudyEntry> Append(string studyId, string who, params IReadOnlyList<StudyEvent> events)
    {
        ArgumentNullException.ThrowIfNull(who);
        ArgumentNullException.ThrowIfNull(events);
        lock (gate)
        {
            try
            {
                using var transaction = connection.BeginTransaction();
                var at = clock.GetUtcNow();
                List<StudyEntry> kept = [];
                foreach (var happened in events)
                {
                    using var command = Command("INSERT INTO entries (study, at, who, event) VALUES ($study, $at, $who, $event) RETURNING number",
                        ("$study", studyId), ("$at", Text(at)), ("$who", who), ("$event", EventJson.Write(happened)));
                    command.Transaction = transaction;
                    kept.Add(new((long)command.ExecuteScalar()!, at, who, happened));
                }

                transaction.Commit();
                return kept;
            }
            catch (SqliteException e)
            {
                throw new StoreException("The entry could not be kept; check that the study is still there and that the disk has room.", e);
            }
        }
    }

    /// <summary>Everything that happened to a study, in order.</summary>
    public IReadOnlyList<StudyEntry> Entries(string studyId) =>
        Query("SELECT number, at, who, event FROM entries WHERE study = $study ORDER BY number",
            r => new StudyEntry(r.GetInt64(0), Time(r.GetString(1)), r.GetString(2), EventJson.Read(r.GetString(3))), ("$study", studyId));

    /// <summary>Everything that happened to a study as it was kept, one JSON object a line, for taking it elsewhere.</summary>
    public string Journal(string studyId) => string.Concat(Query(
        "SELECT json_object('number', number, 'at', at, 'who', who, 'event', json(event)) FROM entries WHERE study = $study ORDER BY number",
        r => r.GetString(0) + "\n", ("$study", studyId)));

    /// <summary>
    /// Deletes a study with its films and entries, overwrites what they took up and empties the log. Of films that arrived by
    /// themselves their digest stays, so that <see cref="WasDeleted"/> knows them when they arrive again.
    /// </summary>
    /// <returns>False if there is no such study.</returns>
    public bool Delete(string studyId)
    {
        lock (gate)
        {
            bool deleted;
            using (var transaction = Begin())
            {
                Write("INSERT OR IGNORE INTO deleted_arrivals SELECT sha256 FROM films JOIN studies ON studies.id = films.study WHERE studies.id = $id AND source IS NOT NULL", ("$id", studyId));
                deleted = Write("DELETE FROM studies WHERE id = $id", ("$id", studyId)) > 0;
                transaction.Commit();
            }

            Execute(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
            return deleted;
        }
    }

    /// <summary>Whether a film that arrived by itself was deleted with its study.</summary>
    /// <param name="content">The file.</param>
    public bool WasDeleted(ReadOnlySpan<byte> content) =>
        Query("SELECT 1 FROM deleted_arrivals WHERE sha256 = $sha", r => r.GetInt64(0), ("$sha", Convert.ToHexStringLower(SHA256.HashData(content)))).Count > 0;

    /// <summary>Keeps the result of a practice film.</summary>
    public void AddPractice(string kind, string result) => Write("INSERT INTO practice (at, kind, result) VALUES ($at, $kind, $result)",
        ("$at", Text(clock.GetUtcNow())), ("$kind", kind), ("$result", result));

    /// <summary>All practice results, the oldest first.</summary>
    public IReadOnlyList<PracticeResult> Practice() => Query("SELECT number, at, kind, result FROM practice ORDER BY number",
        r => new PracticeResult(r.GetInt64(0), Time(r.GetString(1)), r.GetString(2), r.GetString(3)));

    /// <summary>Deletes all practice results.</summary>
    public void DeletePractice() => Write("DELETE FROM practice");

    /// <inheritdoc/>
    public void Dispose() => connection.Dispose();

    private static void Commit(SqliteTransaction transaction)
    {
        try
        {
            transaction.Commit();
        }
        catch (SqliteException e)
        {
            throw new StoreException("The store could not be written; check that the disk has room.", e);
        }
    }

    private SqliteTransaction Begin()
    {
        try
        {
            return connection.BeginTransaction();
        }
        catch (SqliteException e)
        {
            throw new StoreException("The store is held by another program; try again.", e);
        }
    }

    private int Write(string sql, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        lock (gate)
        {
            try
            {
                using var command = Command(sql, values);
                return command.ExecuteNonQuery();
            }
            catch (SqliteException e)
            {
                throw new StoreException("The store could not be written; check that the disk has room.", e);
            }
        }
    }

    private List<T> Query<T>(string sql, Func<SqliteDataReader, T> read, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        lock (gate)
        {
            try
            {
                using var command = Command(sql, values);
                using var reader = command.ExecuteReader();
                List<T> rows = [];
                while (reader.Read())
                {
                    rows.Add(read(reader));
                }

                return rows;
            }
            catch (Exception e) when (e is SqliteException or FormatException or InvalidCastException or InvalidOperationException)
            {
                // The latter three are columns that hold something else: the file is no store, or a damaged one.
                throw new StoreException("The store could not be read.", e);
            }
        }
    }

    private SqliteCommand Command(string sql, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        var command = connection.CreateCommand();
#pragma warning disable CA2100 // every statement is a constant of this class; values travel as parameters
        command.CommandText = sql;
#pragma warning restore CA2100
        foreach (var (name, value) in values)
        {
            command.Parameters.AddWithValue(name, value ?? DBNull.Value);
        }

        return command;
    }

    private static void Execute(SqliteConnection target, string sql)
    {
        using var command = target.CreateCommand();
#pragma warning disable CA2100 // constants of this class
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    private static string? Nullable(SqliteDataReader row, int column) => row.IsDBNull(column) ? null : row.GetString(column);

    private static string Text(DateTimeOffset at) => at.ToUniversalTime().ToString("O", CultureInfo.InvariantCulture);

    private static DateTimeOffset Time(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture);
}
