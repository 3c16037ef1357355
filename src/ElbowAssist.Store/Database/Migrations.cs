using System.Globalization;
using Microsoft.Data.Sqlite;

namespace ElbowAssist.Store.Database;

/// <summary>The tables, one step for each version of the file. A step that has been shipped is never changed.</summary>
internal static class Migrations
{
    private static readonly string[] Steps =
    [
        """
        CREATE TABLE studies (
            id TEXT PRIMARY KEY, title TEXT NOT NULL, origin TEXT NOT NULL, created_at TEXT NOT NULL) STRICT;
        CREATE TABLE films (
            study TEXT NOT NULL REFERENCES studies(id) ON DELETE CASCADE,
            id TEXT NOT NULL, name TEXT NOT NULL, sha256 TEXT NOT NULL, content BLOB NOT NULL, stated TEXT, placements TEXT,
            PRIMARY KEY (study, id), UNIQUE (study, sha256)) STRICT;
        CREATE TABLE entries (
            number INTEGER PRIMARY KEY AUTOINCREMENT,
            study TEXT NOT NULL REFERENCES studies(id) ON DELETE CASCADE,
            at TEXT NOT NULL, who TEXT NOT NULL, event TEXT NOT NULL) STRICT;
        CREATE INDEX entries_by_study ON entries (study, number);
        CREATE TRIGGER entries_are_kept BEFORE UPDATE ON entries BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END;
        CREATE TABLE practice (
            number INTEGER PRIMARY KEY AUTOINCREMENT, at TEXT NOT NULL, kind TEXT NOT NULL, result TEXT NOT NULL) STRICT;
        """,
        """
        ALTER TABLE studies ADD COLUMN source TEXT;
        CREATE INDEX studies_by_source ON studies (source);
        """,
        """
        CREATE TABLE deleted_arrivals (sha256 TEXT PRIMARY KEY) STRICT;
        """,
    ];

    /// <summary>Brings a file to this version, each step whole or not at all.</summary>
    /// <exception cref="StoreException">The file comes from a later version, or is damaged.</exception>
    public static void Run(SqliteConnection connection)
    {
        var version = Version(connection);
        if (version < 0)
        {
            throw new StoreException("The store is damaged: its version is none; name another store, or bring back a copy.");
        }

        if (version > Steps.Length)
        {
            throw new StoreException("The store was written by a later version of the program; use that version, or name another store.");
        }

        for (; version < Steps.Length; version++)
        {
            using var transaction = connection.BeginTransaction();
            using var command = connection.CreateCommand();
            command.Transaction = transaction;
            command.CommandText = Steps[version] + string.Create(CultureInfo.InvariantCulture, $"\nPRAGMA user_version = {version + 1};");
            command.ExecuteNonQuery();
            transaction.Commit();
        }
    }

    private static int Version(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA user_version";
        return Convert.ToInt32(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }
}
