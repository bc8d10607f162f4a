package org.skeinday.contest;

/** Fact {@code entry.model}: this entry may fly this model. */
public record EntryModel(String entryId, String modelId) {}
