# SPDX-License-Identifier: GPL-3.0-or-later
# The Debian package: ninja -C build/release package
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME staveline)
set(CPACK_PACKAGE_CONTACT "Staveline founders <staveline@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "workbench for brewers of mixed-culture sour beer")
set(CPACK_PACKAGE_DESCRIPTION
"Staveline keeps the books of vessels of mixed-culture sour beer that are never
emptied, and does the computation in the decision on each refill: it turns a
structured tasting into gaps with honest errors, says what to change in the
coming refill or to leave it alone, recalculates the recipe to kilograms,
litres and degrees, writes the brew sheet, and follows drawn beer into bottles,
kegs and blends. Everything is kept in one file. It works in a window and from
the command line, without a network and without an account.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
# Folders as Debian has them, whatever the umask of who builds.
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE
  WORLD_READ WORLD_EXECUTE)

set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION misc)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_DEBIAN_DEBUGINFO_PACKAGE OFF)
# The plugins for X, for papers without a display, for printers and for the icon stand in the packages of libraries that
# the program links, and are found by that. No library brings a font. A Wayland display wants a package of its own.
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
if(STAVELINE_WINDOW)
  set(CPACK_DEBIAN_PACKAGE_DEPENDS fonts-dejavu-core)
  set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "hicolor-icon-theme, qt6-translations-l10n, qt6-wayland, shared-mime-info")
endif()
include(CPack)

# Tries the package in a clean Debian; not part of the tests, as it fetches a system.
add_custom_target(packaged
  COMMAND ${CMAKE_CPACK_COMMAND} --config ${PROJECT_BINARY_DIR}/CPackConfig.cmake
  COMMAND ${PROJECT_SOURCE_DIR}/tests/packaged ${PROJECT_BINARY_DIR}
  USES_TERMINAL VERBATIM)
add_dependencies(packaged staveline pressed)
