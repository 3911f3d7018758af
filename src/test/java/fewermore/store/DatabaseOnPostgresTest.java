package fewermore.store;

@OnPostgres
class DatabaseOnPostgresTest extends DatabaseTest {}
