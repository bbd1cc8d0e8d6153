"""From a surveyed site to a raise plan: read a site, find the path, work out the forces."""
