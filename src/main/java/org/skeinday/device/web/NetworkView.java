package org.skeinday.device.web;

import java.util.List;

/**
 * How tablets reach the laptop.
 *
 * @param address for the code
 * @param all that could be tried, that one first
 * @param movedFrom where devices joined, when the laptop is not there any more; else empty
 * @param heard from how many others the laptop has heard, in words
 */
public record NetworkView(String address, List<String> all, String movedFrom, String heard) {}
